/** The few lowest of the values shown to it, rising; Infinity where there were fewer. */
export class FewLowest {
  readonly values: Float64Array

  constructor(private readonly count: number) {
    this.values = new Float64Array(count)
  }

  /** By hand: the method of the array takes longer for so few. */
  clear(): void {
    for (let nth = 0; nth < this.count; nth += 1) this.values[nth] = Number.POSITIVE_INFINITY
  }

  /** False where it is not among them. */
  add(value: number): boolean {
    const { values } = this
    let to = this.count - 1
    if (value >= (values[to] as number)) return false
    for (; to > 0 && (values[to - 1] as number) > value; to -= 1) values[to] = values[to - 1] as number
    values[to] = value
    return true
  }
}
