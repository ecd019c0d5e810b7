package words

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"minim/report/page"
	"minim/uncertainty/hazards"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// The solute undiluted, and each liquid; water only where words are stated for it, and
// whatever it is called.
func TestCautionsOfSubstances(t *testing.T) {
	const last = "These are reminders. The safety data sheets, local rules and licensed disposal decide; nothing here says that the work is safe."
	for _, test := range []struct {
		solute, solvent []string
		name            string
		want            []string
	}{
		{nil, []string{"acid", "my own word"}, "vinegar", []string{"Urea, undiluted: not stated, treat as unknown.", "Vinegar: acid (the acid slowly into the solvent, never water into the acid), my own word."}},
		{[]string{"none known"}, nil, "water", []string{"Urea, undiluted: stated by the user: none known."}},
		{[]string{"Toxic"}, nil, "Deionised  Water", []string{"Urea, undiluted: Toxic (gloves, and no more than is needed)."}},
		{[]string{}, []string{"corrosive"}, "Water", []string{"Urea, undiluted: not stated, treat as unknown.", "Water: corrosive (protect eyes and skin)."}},
		{[]string{"toxic", "irritant"}, []string{"irritant"}, "water", []string{"Urea, undiluted: toxic (gloves, and no more than is needed), irritant (protect eyes and skin).", "Water: irritant."}},
		{[]string{"toxic"}, nil, "oil", []string{"Urea, undiluted: toxic (gloves, and no more than is needed).", "Oil: not stated, treat as unknown."}},
	} {
		p := &route.Prep{Solute: route.Solute{Name: "urea", Hazards: test.solute}, Solvent: route.Solvent{Name: test.name, Hazards: test.solvent}}
		assert.Equal(t, append(test.want, last), Cautions(p, nil))
	}
}

// The words of a hazard hold where the upper end of the interval reaches its strength,
// and it is said when the lower end does not. Constructed.
func TestLabelTakesTheStricterSide(t *testing.T) {
	from := func(value float64) hazards.Stated {
		return hazards.Stated{From: strengths.Strength{Value: value, Text: fmt.Sprintf("%v g/L", value)}, Words: []string{fmt.Sprintf("from %v", value)}}
	}
	p := paperOf(100, 2)
	p.Prep.Hazards = []hazards.Stated{from(97.9), from(101.9), from(102.1)}
	var lines []page.Paragraph
	for _, line := range p.labels(Label{Count: 1}).List[0].Lines {
		lines = append(lines, line.Paragraph)
	}
	assert.Contains(t, lines, page.Paragraph{Style: "hazard", Text: "this solution: from 97.9, from 101.9"})
	assert.Contains(t, lines, page.Paragraph{Style: "small", Text: "the strength could be on either side of 101.9 g/L: the words are those of the stricter"})
}
