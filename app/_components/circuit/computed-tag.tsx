/** Stands wherever a figure comes from the model, so that nobody takes it for a reading. */
export function ComputedTag() {
  return (
    <span className="tag" data-shape="≈">
      computed, not measured
    </span>
  )
}
