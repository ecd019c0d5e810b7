package clause

import (
	"fmt"
	"strings"
)

// Count is "no route", "1 route", "2 routes", "3 entries", "4 ways".
func Count(n int, noun string) string {
	switch n {
	case 0:
		return "no " + noun
	case 1:
		return "1 " + noun
	}
	if stem, ok := strings.CutSuffix(noun, "y"); ok && !strings.HasSuffix(stem, "a") {
		return fmt.Sprintf("%d %sies", n, stem)
	}
	return fmt.Sprintf("%d %s%s", n, noun, When(strings.HasSuffix(noun, "ch"), "e")+"s")
}

// Counted says those that are alike and follow each other once.
func Counted(steps []string) (list []string) {
	for from := 0; from < len(steps); {
		to := from + 1
		for to < len(steps) && steps[to] == steps[from] {
			to++
		}
		list = append(list, steps[from]+When(to-from > 1, fmt.Sprintf(" (%d times)", to-from)))
		from = to
	}
	return list
}
