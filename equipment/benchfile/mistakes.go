package benchfile

import (
	"errors"
	"fmt"
	"strings"
)

// mistakes are all that is wrong in a file, in its order. There are two or more; one is
// a *Mistake alone. [errors.As] finds the first, [Told] as many as are told.
type mistakes []*Mistake

// mostTold is how many mistakes of a file are told.
const mostTold = 20

// Error tells them one below the other, as far as they are told.
func (all mistakes) Error() string {
	told, more := Told(all)
	texts := make([]string, len(told), len(told)+1)
	for i, m := range told {
		texts[i] = m.Error()
	}
	if more != "" {
		texts = append(texts, more)
	}
	return strings.Join(texts, "\n")
}

// Told are the mistakes in an error to be told, and "and 3 more mistakes" where there are more.
func Told(err error) (told []*Mistake, more string) {
	all := mistakesIn(err)
	switch rest := len(all) - mostTold; {
	case rest == 1:
		return all[:mostTold], errors.New("and 1 more mistake").Error()
	case rest > 1:
		return all[:mostTold], fmt.Errorf("and %d more mistakes", rest).Error()
	}
	return all, ""
}

// Unwrap returns them one by one.
func (all mistakes) Unwrap() []error {
	list := make([]error, len(all))
	for i, m := range all {
		list[i] = m
	}
	return list
}

// mistakesIn lists the mistakes that an error tells, none where it tells of something else.
func mistakesIn(err error) []*Mistake {
	var all mistakes
	var one *Mistake
	switch {
	case errors.As(err, &all):
		return all
	case errors.As(err, &one):
		return []*Mistake{one}
	}
	return nil
}
