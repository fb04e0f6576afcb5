/** Dense systems of a few equations, by Gaussian elimination with partial pivoting. */

/**
 * The LU factors of a dense square matrix, with partial pivoting, in its own place.
 * @param order n; becomes which row stands where
 * @returns false when the matrix is singular to working precision
 */
export function factor(matrix: Float64Array, order: Int32Array, n: number): boolean {
  for (let row = 0; row < n; row++) order[row] = row;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) if (Math.abs(matrix[row * n + column]!) > Math.abs(matrix[pivot * n + column]!)) pivot = row;
    if (!(Math.abs(matrix[pivot * n + column]!) > 1e-14)) return false;
    if (pivot !== column) {
      for (let k = 0; k < n; k++) {
        const held = matrix[column * n + k]!;
        matrix[column * n + k] = matrix[pivot * n + k]!;
        matrix[pivot * n + k] = held;
      }
      const held = order[column]!;
      order[column] = order[pivot]!;
      order[pivot] = held;
    }
    const diagonal = matrix[column * n + column]!;
    for (let row = column + 1; row < n; row++) {
      const part = matrix[row * n + column]! / diagonal;
      matrix[row * n + column] = part;
      if (part === 0) continue;
      for (let k = column + 1; k < n; k++) matrix[row * n + k]! -= part * matrix[column * n + k]!;
    }
  }
  return true;
}
/** Solves with factors: `into` becomes the solution for `right`, which is kept. */
export function solveFactored(factors: Float64Array, order: Int32Array, right: Float64Array, into: Float64Array): void {
  const n = right.length;
  for (let row = 0; row < n; row++) {
    let sum = right[order[row]!]!;
    for (let k = 0; k < row; k++) sum -= factors[row * n + k]! * into[k]!;
    into[row] = sum;
  }
  substitute(factors, into, n);
}
function substitute(matrix: Float64Array, right: Float64Array, n: number): void {
  for (let row = n - 1; row >= 0; row--) {
    let sum = right[row]!;
    for (let k = row + 1; k < n; k++) sum -= matrix[row * n + k]! * right[k]!;
    right[row] = sum / matrix[row * n + row]!;
  }
}
/**
 * Solves a dense square system in place.
 * @param matrix rows one after another, n*n; destroyed
 * @param right n; becomes the solution
 * @param second another right side, solved with the same elimination
 * @returns false when the matrix is singular to working precision
 */
export function solveInPlace(matrix: Float64Array, right: Float64Array, n: number, second?: Float64Array): boolean {
  const order = new Int32Array(n);
  if (!factor(matrix, order, n)) return false;
  const solution = new Float64Array(n);
  solveFactored(matrix, order, right, solution);
  right.set(solution);
  if (second) {
    solveFactored(matrix, order, second, solution);
    second.set(solution);
  }
  return true;
}
