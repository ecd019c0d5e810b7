package route

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every wording of a strong solute puts solvent first, and so does its name where no words
// hold for its strength; where the user states some, those count.
func TestStrongInWhateverWords(t *testing.T) {
	for _, row := range []struct {
		name, hazards, at string
		into              bool
	}{
		{"stuff", `["acidic"]`, "", true}, {"stuff", `["strong base"]`, "", true}, {"stuff", `["Causes burns"]`, "", true}, {"stuff", `["evolves gas"]`, "", true},
		{"stuff", `["irritant"]`, "", false}, {"stuff", `["non-corrosive"]`, "", false},
		{"sodium hydroxide", `["irritant"]`, "", true}, {"sulphuric acid", `["toxic"]`, "", true}, {"caustic potash", `["none known"]`, "", true},
		{"citric acid", `["irritant"]`, "", false}, {"amino acid", `["irritant"]`, "", false},
		{"hydrochloric acid", `["toxic"]`, `["none known"]`, false}, {"hydrochloric acid", `["toxic"]`, `["corrosive"]`, true},
	} {
		more := ""
		if row.at != "" {
			more = fmt.Sprintf(`hazard = [ { from = "0.1 %% w/v", words = %s } ]`, row.at)
		}
		p := parse(t, orderKit, fmt.Sprintf(`target = "1 %% w/v"
volume = "5 mL"
solute = { name = %q, hazards = %s }
solvent = { name = "water" }
stock = [ { name = "bottle", strength = "3 %% w/v" } ]
%s
route = [ { name = "one", steps = [ { start = "bottle" }, { take = "5 mL", with = "pipette" }, { make-up-to = "50 mL", in = "flask" } ] } ]
`, row.name, row.hazards, more))
		orders, err := p.Orders(p.Routes[0])
		require.NoError(t, err)
		assert.Equal(t, row.into, orders[1].IntoSolvent, row)
	}
}
