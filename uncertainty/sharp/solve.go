package sharp

// solve finds x in A x = b for a symmetric positive definite matrix A, of which the
// lower half is read, by its Cholesky factor without roots, A = L D L'. It reports
// false where A is singular but for rounding. A and b are used up.
func solve(a [][]float64, b []float64) (x []float64, ok bool) {
	for j := range a {
		diagonal := a[j][j]
		for k := range j {
			a[j][j] -= float64(a[j][k] * a[j][k] * a[k][k])
		}
		if !(a[j][j] > singular*diagonal) {
			return nil, false
		}
		for i := j + 1; i < len(a); i++ {
			for k := range j {
				a[i][j] -= float64(a[i][k] * a[j][k] * a[k][k])
			}
			a[i][j] /= a[j][j]
		}
	}
	return substitute(a, b), true
}

// singular is what is left of a diagonal by rounding, relative to what it was.
const singular = 1e-14

// substitute goes down L, through D and up L'.
func substitute(l [][]float64, b []float64) []float64 {
	for i := range b {
		for k := range i {
			b[i] -= float64(l[i][k] * b[k])
		}
	}
	for i := len(b) - 1; i >= 0; i-- {
		b[i] /= l[i][i]
		for k := i + 1; k < len(b); k++ {
			b[i] -= float64(l[k][i] * b[k])
		}
	}
	return b
}
