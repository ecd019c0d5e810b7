package note

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What several notes have in common is said once, with their names joined, where the first of them stood.
func TestJoined(t *testing.T) {
	for _, c := range []struct {
		notes []Note
		want  []string
	}{
		{[]Note{Of("sensitivity", "0.01 g scale"), Of("left-on-boat", ""), Of("sensitivity", "0.001 g scale"), Of("sensitivity", "0.1 g scale")},
			[]string{"error of the sensitivity of the 0.01 g, the 0.001 g and the 0.1 g scale (span not stated)", "what stays on the weighing boat, which is not rinsed"}},
		{[]Note{Of("sensitivity", "scale"), Of("sensitivity", "0.1 g scale")}, []string{"error of the sensitivity of the scale and the 0.1 g scale (span not stated)"}},
		{[]Note{Of("limits-of-class", "a", "X"), Of("limits-of-class", "b", "Y"), Of("limits-of-class", "c", "X")},
			[]string{"the a and the c have the limits of X", "the b has the limits of Y"}},
		{[]Note{Of("bore-by-height", "a", 15.8, 19.4, "X"), Of("bore-by-height", "b", 24.9, 29.6, "X")},
			[]string{"the a (15.8 to 19.4 mm) and the b (24.9 to 29.6 mm) are at most as wide inside at their marks as X has it, and at least as their greatest heights allow"}},
		{[]Note{Of("limit-at", "a", "1 mL", "10 mL", "X"), Of("limit-at", "a", "2 mL", "20 mL", "X")}, []string{"the limits of the a, ±1 mL at 10 mL and ±2 mL at 20 mL (X)"}},
		{[]Note{Of("limit-at", "a", "1 mL", "10 mL", "X"), Of("limit-at", "b", "2 mL", "20 mL", "X")}, []string{"the limits of the a (±1 mL at 10 mL) and the b (±2 mL at 20 mL), after X"}},
		{[]Note{Of("meniscus-without-bore", "ethanol", "a"), Of("meniscus-without-bore", "ethanol", "b"), Of("meniscus-without-bore", "water", "b")},
			[]string{"height of the meniscus of ethanol in the a and the b (bores not known)", "height of the meniscus of water in glass that is adjusted"}[:1]},
		{[]Note{Of("sensitivity", "{} %[1]s 100 %%"), Of("sensitivity", "b%d")}, []string{"error of the sensitivity of the {} %[1]s 100 %% and the b%d (span not stated)"}},
		{[]Note{Of("scatter-of-drops", "a"), Of("scatter-of-drops", "b")}, []string{"the drops of the a and the b scatter by 5 %"}},
	} {
		got := Joined(c.notes)
		assert.Equal(t, c.want, got[:len(c.want)])
	}
	assert.Empty(t, Joined(nil))
}

// Each way to join is of a code that there is, of arguments that it has, and says all that may differ.
func TestJointsFitTheirCodes(t *testing.T) {
	for code, list := range joints {
		text, found := words[code]
		if !assert.True(t, found, code) {
			continue
		}
		n := wants(text)
		for _, j := range list {
			assert.Equal(t, 1, strings.Count(j.all, "{}"), code)
			assert.LessOrEqual(t, max(wants(j.all), wants(j.each)), n, code)
			for at := 1; at <= n; at++ {
				form := "[" + strconv.Itoa(at) + "]"
				assert.True(t, strings.Contains(j.all+j.each, form) || at == 1 && j.each == "", "%s: argument %d is lost in %q", code, at, j.all)
			}
		}
	}
}

// figure is printed as a number and as a text.
type figure float64

func (figure) String() string { return "so much" }

// No notes are lost, whatever is joined.
func TestNothingIsLost(t *testing.T) {
	var list []Note
	for code, joints := range joints {
		for i, name := range []string{"one a", "two b"} {
			args := make([]any, max(0, wants(words[code])-1))
			for k := range args {
				args[k] = figure(k)
			}
			switch all := joints[0].all; {
			case strings.Contains(all, "[1]") && strings.Contains(joints[0].each, "[1]"):
				t.Errorf("%s says its subject twice", code)
			case strings.Contains(all, "[1]"):
				name, args[0] = "one a", figure(i)
			}
			list = append(list, Of(code, name, args...))
		}
	}
	joined := Joined(list)
	assert.Len(t, joined, len(joints))
	for _, text := range joined {
		assert.NotContains(t, text, "%!")
		assert.Contains(t, text, " and ")
	}
}
