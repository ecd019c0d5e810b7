package uncertainty

import "math"

// linearMoments returns the standard deviation u of L = Σ slope (x - mean), and
// E[L], E[L²] and E[L³] in units of u. Only the first two are given when an
// influence has heavy tails, since L³ would scatter too much; u is infinite when
// one has no variance.
func (m *Model) linearMoments(slopes []float64) (u float64, moments []float64) {
	c := make([]float64, len(slopes))
	for i, slope := range slopes {
		if slope != 0 {
			c[i] = slope * m.standardDeviation(i)
		}
	}
	u = combine(c, m.correlate(c))
	third := 0.0
	for i := range c {
		nu := m.drawnDegrees(i)
		switch r := c[i] / u; {
		case (nu <= 6 || m.isTold(i)) && c[i] != 0: // or by one scale with others
			return u, []float64{0, 1}
		case math.IsInf(nu, 1):
			third += float64(r * r * r * m.influences[i].Distribution.Summary().Skewness)
		}
	}
	return u, []float64{0, 1, third}
}

// standardDeviation that an influence is drawn with; +Inf where it has none.
func (m *Model) standardDeviation(influence int) float64 {
	d := m.influences[influence].Distribution
	if nu := m.drawnDegrees(influence); !math.IsInf(nu, 1) {
		d = StudentT{Sigma: d.Summary().StandardUncertainty, Nu: nu}
	}
	return standardDeviation(d)
}

// standardDeviation of a distribution, which for a Student t is not its u; +Inf
// where it has none.
func standardDeviation(d Distribution) float64 {
	t, student := d.(StudentT)
	table, posterior := d.(Tabulated)
	switch {
	case posterior:
		return table.Deviation()
	case !student:
		return d.Summary().StandardUncertainty
	case t.Nu <= 2:
		return math.Inf(1)
	}
	return t.Sigma * math.Sqrt(t.Nu/(t.Nu-2))
}
