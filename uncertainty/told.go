package uncertainty

import (
	"sync"
	"unique"

	"minim/uncertainty/posterior"
)

// isTold reports a posterior that is drawn with the scale of its set.
func (m *Model) isTold(influence int) bool {
	d, is := m.influences[influence].Distribution.(Tabulated)
	return is && d.ofSet && m.scaleOf[influence] >= 0
}

// toldLately are those that were asked for last, since some hundred quantiles of Student's t take milliseconds.
var toldLately struct {
	sync.Mutex
	known map[toldKey]*posterior.Told
}

type toldKey struct {
	table unique.Handle[posterior.Table]
	nu    float64
}

const mostPosteriors = 100

// toldOf is what a posterior of readings with degrees of freedom is drawn by.
func toldOf(d Tabulated, nu float64) *posterior.Told {
	of := toldKey{d.table, nu}
	toldLately.Lock()
	defer toldLately.Unlock()
	t := toldLately.known[of]
	if t == nil {
		if len(toldLately.known)%mostPosteriors == 0 {
			toldLately.known = make(map[toldKey]*posterior.Told)
		}
		t = posterior.NewTold(d.table.Value(), nu)
		toldLately.known[of] = t
	}
	return t
}
