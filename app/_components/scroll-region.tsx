/** A table that may be wider than the page: scrolled with the finger, or by keyboard. */
export function ScrollRegion({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  )
}
