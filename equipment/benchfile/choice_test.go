package benchfile

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/equipment/quantity"
)

func TestFailWith(t *testing.T) {
	_, _, bare := quantity.ParseShareOf("8 %")
	for err, want := range map[error][2]string{
		bare:                 {`a: "8 %" does not say of what`, `say of what it is a share, as in "8 % of target" or "2 % of capacity"`},
		errors.New("is odd"): {"a: is odd", ""},
	} {
		root := parsed(t, `a = "8 %"`)
		root.FailWith("a", err)
		m := root.Err().(*Mistake)
		assert.Equal(t, want, [2]string{m.Message, m.Hint})
	}
}

func TestNoSuch(t *testing.T) {
	for _, c := range []struct {
		name  string
		among []string
		hint  string
	}{
		{"25 mL flsk", []string{"25 mL flask", "scale"}, `perhaps "25 mL flask" is meant`},
		{"oven", []string{"25 mL flask", "scale"}, "choose from 25 mL flask, scale"},
		{"oven", nil, "there is none to choose from"},
	} {
		root := parsed(t, `in = "x"`)
		root.FailWith("in", NoSuch("instrument", c.name, c.among))
		m := root.Err().(*Mistake)
		assert.Equal(t, `in: there is no instrument called "`+c.name+`"`, m.Message)
		assert.Equal(t, c.hint, m.Hint)
	}
}
