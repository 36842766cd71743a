/** A search that is part of the address, so that it can be gone back to. */
export function SearchBar({ action, value, label }: { action: string; value: string; label: string }) {
  return (
    <form action={action} className="row">
      <div className="field" style={{ flex: '1 1 16rem', maxWidth: '32rem' }}>
        <label htmlFor="q">{label}</label>
        <input id="q" name="q" type="search" defaultValue={value} />
      </div>
      <button type="submit" className="button quiet" style={{ alignSelf: 'end' }}>
        Look up
      </button>
    </form>
  )
}
