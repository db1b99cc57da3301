/**
 * Scaled eigenvectors of a first-order random walk's structure matrix K, so that walk = B x with x independent standard
 * normal, when first differences have sd 1: B Bᵀ = K⁺, the pseudo-inverse, and every column sums to zero. The one
 * eigenvector with eigenvalue 0, the level, is left out: `positions` rows, `positions` − 1 columns, stored by rows.
 *
 * Eigenvalues: circle 2 − 2 cos(2π j / n); line 2 − 2 cos(π j / n) (Rue and Held, Gaussian Markov Random Fields, 2005, 2.6 and
 * ch. 3; the line's eigenvectors are the discrete cosine transform, Strang, SIAM Review 41, 1999).
 */
export function walkBasis(kind: 'cyclic-walk' | 'walk', positions: number): Float64Array {
  const columns = positions - 1;
  const basis = new Float64Array(positions * columns);
  for (let column = 0; column < columns; column++) {
    const frequency = kind === 'walk' ? column + 1 : (column >> 1) + 1;
    const step = (kind === 'walk' ? Math.PI : 2 * Math.PI) / positions;
    const perRootEigenvalue = 1 / Math.sqrt(2 - 2 * Math.cos(step * frequency));
    // The highest frequency of an even circle alternates in sign: one vector, of length √n instead of √(n/2).
    const isAlternating = kind === 'cyclic-walk' && 2 * frequency === positions;
    const length = Math.sqrt(isAlternating ? positions : positions / 2);
    for (let position = 0; position < positions; position++) {
      const at = kind === 'walk' ? position + 0.5 : position;
      const isSine = kind === 'cyclic-walk' && column % 2 === 1;
      const value = isSine ? Math.sin(step * frequency * at) : Math.cos(step * frequency * at);
      basis[position * columns + column] = (value / length) * perRootEigenvalue;
    }
  }
  return basis;
}
