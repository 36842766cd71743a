/**
 * A = Pᵀ·L·U kept, so that one elimination serves many right-hand sides (Golub and Van
 * Loan, "Matrix Computations", section 3.4). Rows of `stride` numbers; nothing is allocated.
 */
import { at } from '@/lib/domain/circuit/solver/dense-lu'

function largestBelow(matrix: Float64Array, column: number, size: number, stride: number): number {
  let row = column
  let largest = Math.abs(at(matrix, column * stride + column))
  for (let other = column + 1; other < size; other++) {
    const candidate = Math.abs(at(matrix, other * stride + column))
    if (candidate > largest) {
      largest = candidate
      row = other
    }
  }
  return largest > 0 ? row : -1
}

function exchange(matrix: Float64Array, one: number, two: number, size: number, stride: number): void {
  for (let column = 0; column < size; column++) {
    const kept = at(matrix, one * stride + column)
    matrix[one * stride + column] = at(matrix, two * stride + column)
    matrix[two * stride + column] = kept
  }
}

/** In place: L below the diagonal, U on and above it. False: a pivot is zero or not a number. */
export function factor(matrix: Float64Array, exchanges: Uint8Array, size: number, stride: number): boolean {
  for (let column = 0; column < size; column++) {
    const pivot = largestBelow(matrix, column, size, stride)
    if (pivot < 0) return false
    exchanges[column] = pivot
    if (pivot !== column) exchange(matrix, column, pivot, size, stride)
    const inverse = 1 / at(matrix, column * stride + column)
    for (let row = column + 1; row < size; row++) {
      const share = at(matrix, row * stride + column) * inverse
      matrix[row * stride + column] = share
      if (share === 0) continue
      for (let next = column + 1; next < size; next++) {
        matrix[row * stride + next] = at(matrix, row * stride + next) - share * at(matrix, column * stride + next)
      }
    }
  }
  return true
}

/** Solves Aᵀ·x = b for the b that stands from `from` on in `right`, and leaves x there. */
export function solveTransposed(
  factors: Float64Array,
  exchanges: Uint8Array,
  size: number,
  stride: number,
  right: Float64Array,
  from: number,
): void {
  for (let k = 0; k < size; k++) {
    const value = at(right, from + k) / at(factors, k * stride + k)
    right[from + k] = value
    for (let later = k + 1; later < size; later++) {
      right[from + later] = at(right, from + later) - at(factors, k * stride + later) * value
    }
  }
  for (let k = size - 1; k > 0; k--) {
    const value = at(right, from + k)
    for (let earlier = 0; earlier < k; earlier++) {
      right[from + earlier] = at(right, from + earlier) - at(factors, k * stride + earlier) * value
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    const other = exchanges[k] as number
    const kept = at(right, from + k)
    right[from + k] = at(right, from + other)
    right[from + other] = kept
  }
}
