/**
 * Solves A·x = b in place by Gaussian elimination with row exchange for the largest
 * pivot (Golub and Van Loan, "Matrix Computations", algorithm 3.4.1).
 *
 * `matrix` holds `size` rows of `stride` numbers; both arrays are overwritten, `right`
 * becomes x. Allocates nothing. Returns the sign of the determinant, 0 when a pivot is zero
 * or not a number: then there is no x.
 */
export const at = (numbers: Float64Array, place: number): number => numbers[place] as number

export function solveInPlace(matrix: Float64Array, right: Float64Array, size: number, stride: number): -1 | 0 | 1 {
  let sign: -1 | 1 = 1
  for (let column = 0; column < size; column++) {
    let pivotRow = column
    let largest = Math.abs(at(matrix, column * stride + column))
    for (let row = column + 1; row < size; row++) {
      const candidate = Math.abs(at(matrix, row * stride + column))
      if (candidate > largest) {
        largest = candidate
        pivotRow = row
      }
    }
    if (!(largest > 0)) return 0
    if (pivotRow !== column) {
      exchange(matrix, right, size, stride, column, pivotRow)
      sign = sign === 1 ? -1 : 1
    }
    if (at(matrix, column * stride + column) < 0) sign = sign === 1 ? -1 : 1
    eliminateBelow(matrix, right, size, stride, column)
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = at(right, row)
    for (let column = row + 1; column < size; column++) sum -= at(matrix, row * stride + column) * at(right, column)
    right[row] = sum / at(matrix, row * stride + row)
  }
  return sign
}

function exchange(matrix: Float64Array, right: Float64Array, size: number, stride: number, one: number, two: number) {
  for (let column = one; column < size; column++) {
    const kept = at(matrix, one * stride + column)
    matrix[one * stride + column] = at(matrix, two * stride + column)
    matrix[two * stride + column] = kept
  }
  const kept = at(right, one)
  right[one] = at(right, two)
  right[two] = kept
}

function eliminateBelow(matrix: Float64Array, right: Float64Array, size: number, stride: number, pivot: number) {
  const inverse = 1 / at(matrix, pivot * stride + pivot)
  for (let row = pivot + 1; row < size; row++) {
    const factor = at(matrix, row * stride + pivot) * inverse
    if (factor === 0) continue
    for (let column = pivot + 1; column < size; column++) {
      const place = row * stride + column
      matrix[place] = at(matrix, place) - factor * at(matrix, pivot * stride + column)
    }
    right[row] = at(right, row) - factor * at(right, pivot)
  }
}
