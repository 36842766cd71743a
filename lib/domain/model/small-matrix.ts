/** Symmetric positive definite systems of a few unknowns, by Cholesky's square roots. Rows of numbers. */
export type Matrix = readonly (readonly number[])[]

const entry = (matrix: Matrix, i: number, j: number): number => matrix[i]?.[j] ?? Number.NaN

/** Lower triangle L with L·Lᵀ = A. Null where a pivot is not safely positive: the system does not fix every unknown. */
function squareRoot(matrix: Matrix): Matrix | null {
  const lower: number[][] = []
  for (let i = 0; i < matrix.length; i++) {
    const row: number[] = []
    lower.push(row)
    for (let j = 0; j <= i; j++) {
      let sum = entry(matrix, i, j)
      for (let k = 0; k < j; k++) sum -= (row[k] ?? 0) * entry(lower, j, k)
      if (i > j) row.push(sum / entry(lower, j, j))
      else if (sum > 1e-10 * entry(matrix, i, i)) row.push(Math.sqrt(sum))
      else return null
    }
  }
  return lower
}

export function solve(matrix: Matrix, right: readonly number[]): readonly number[] | null {
  const lower = squareRoot(matrix)
  if (!lower) return null
  const half: number[] = []
  for (const [i, value] of right.entries()) {
    const known = half.reduce((sum, one, k) => sum + entry(lower, i, k) * one, 0)
    half.push((value - known) / entry(lower, i, i))
  }
  const found = new Array<number>(half.length).fill(0)
  for (let i = half.length - 1; i >= 0; i--) {
    let sum = half[i] ?? Number.NaN
    for (let k = i + 1; k < half.length; k++) sum -= entry(lower, k, i) * (found[k] ?? 0)
    found[i] = sum / entry(lower, i, i)
  }
  return found
}

export function inverse(matrix: Matrix): Matrix | null {
  const columns = matrix.map((_, j) =>
    solve(
      matrix,
      matrix.map((__, i) => (i === j ? 1 : 0)),
    ),
  )
  const complete = columns.filter((column) => column !== null)
  return complete.length === matrix.length ? complete : null
}

/** aᵀ·M·b */
export function bilinear(a: readonly number[], matrix: Matrix, b: readonly number[]): number {
  return a.reduce((sum, x, i) => sum + x * b.reduce((inner, y, j) => inner + entry(matrix, i, j) * y, 0), 0)
}
