package words

import (
	"strings"

	"minim/report/page"
	"minim/report/words/beside"
	"minim/uncertainty/route"
)

// besideResult says on paper what belongs beside the result.
func besideResult(r *route.Result) (list []page.Block) {
	for _, f := range beside.Facts(r) {
		list = append(list, prose(f.Label+": "+f.Text+"."))
	}
	if text := restsOn(r, "expanded uncertainty"); text != "" {
		list = append(list, prose(capital(text)+"."))
	}
	if left := beside.LeftOut(r); len(left) > 0 {
		list = append(list, prose("Not counted, however large it may be: "+strings.Join(left, "; ")+"."))
	}
	return list
}
