package route

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A balance that is called like a step is as wrong in every step: what it shares is not
// taken for a step's own (constructed).
func TestFactorDoesNotReadNames(t *testing.T) {
	shared := func(name string) Factor {
		p := parse(t, "[[balance]]\nname = \""+name+"\"\ncapacity = \"100 g\"\nreadability = \"0.01 g\"\nspan = \"0.1 % of reading\"\n",
			smallPrep(`target = "39.4 g/L"`, `{ weigh = "1.00 g", on = "`+name+`" }, { dissolve-in = "25.00 g", on = "`+name+`" }`))
		f, _, err := p.SourceFactor(0.95, p.Routes[0].Steps[0])
		require.NoError(t, err)
		return f
	}
	want := shared("scale")
	assert.NotEmpty(t, want.Shared)
	for _, name := range []string{"step 1 of ", "step 1 of two", "step 1 of , tare"} {
		got := shared(name)
		assert.Equal(t, []any{want.Own, want.Scatter, len(want.Shared)}, []any{got.Own, got.Scatter, len(got.Shared)}, name)
	}
}

// Whether limits were stated one by one does not rest on their text (constructed).
func TestStatedOneByOne(t *testing.T) {
	assert.False(t, Tolerance{Text: "not above 1 g/L"}.Stated)
	p := parse(t, smallKit, smallPrep("target = \"100 g/L\"\nnot-above = \"110 g/L\"", `{ weigh = "1.00 g", on = "scale" }, { make-up-to = "25 mL", in = "flask" },`))
	assert.True(t, p.Tolerances[0].Stated)
}
