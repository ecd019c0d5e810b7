package bench

import (
	"errors"
	"fmt"
	"strings"

	"minim/equipment"
	"minim/equipment/benchfile"
	"minim/equipment/quantity"
	"minim/uncertainty/route"
	"minim/uncertainty/strengths"
)

// readStock reads a solution that stands ready.
func (p prepReader) readStock(t *benchfile.Table) *route.Stock {
	t.Need("name", "strength")
	names := namesOf(p.Stocks, stockName, nil)
	s := &route.Stock{Name: nameOf(t, "stocks", names, ownName), Solvent: t.Text("solvent"), Loss: shareOf(t, "loss", "strength")}
	s.Density = likely(t, "density", quantity.Density, quantity.Limits.SolventDensity, "ammonia of 25 % w/w has \"0.907 g/mL\", sulphuric acid of 96 % w/w \"1.836 g/mL\"")
	parse := func(text string) (float64, error) {
		v, err := p.strengthOf(s, text)
		switch {
		case err != nil:
			return 0, err
		case s.Unit.Name != "" && v.Unit != s.Unit:
			return 0, &quantity.Error{Found: text, Message: fmt.Sprintf("%s and %s are mixed", s.Unit.Name, v.Unit.Name), Hint: "state one strength in one unit"}
		}
		s.Unit = v.Unit
		return v.Value, nil
	}
	s.Strength = estimate(t, "strength", parse, parse)
	s.Volume = estimate(t, "volume", quantity.ParseStockVolume, quantity.ParseStockVolume)
	s.As = p.readAs(t, s.Unit)
	s.Opened = readOpened(t)
	return s
}

// strengthOf reads a strength that a stock can have. What turns it into a mass may have a
// mistake in it, which is told already.
func (p prepReader) strengthOf(s *route.Stock, text string) (strengths.Strength, error) {
	v, err := p.ParseStrength(text)
	var lack *route.LackError
	if errors.Is(err, route.ErrFollows) || errors.As(err, &lack) {
		alone, wrong := strengths.Parse(text)
		if wrong == nil && (lack == nil || p.CanState(s, alone) == nil) {
			return alone, nil
		}
	}
	return v, err
}

// readAs reads which of the two forms of a substance its strengths count.
func readAs(t *benchfile.Table, substance string) string {
	text := t.Text("as")
	if text == "" {
		return ""
	}
	known, found := equipment.FindStock(substance)
	if !found || len(known.Forms()) < 2 {
		t.FailKey("as", fmt.Sprintf("labels count %s in one way, as far as the table of stocks knows", substance), "leave as out")
		return ""
	}
	form, ok := known.Form(text)
	if !ok {
		t.Fail("as", fmt.Sprintf("%q is not what labels of %s count", text, known.Name), "write "+strings.Join(known.Forms(), " or "))
	}
	return form
}

// readAs reads which form the strength of a stock counts, beside that of the solute.
func (p prepReader) readAs(t *benchfile.Table, u strengths.Unit) string {
	form := readAs(t, p.Solute.Name)
	solute := t.Root().Table("solute")
	switch {
	case form == "":
	case u.Name != "" && !u.CountsMass():
		t.FailKey("as", "it makes a difference to masses, and a strength in "+u.Name+" counts none", "leave as out")
	case p.Solute.As == "" && solute != nil && solute.Sound("as"):
		t.FailFor(solute, []string{"as"}, "as", "the prep does not say what its own strengths count", "state as in the table [solute] as well")
	}
	return form
}

// needDensities refuses stocks by mass of which no density is known. What a record was begun
// with stays as it was.
func (p prepReader) needDensities(root *benchfile.Table) {
	for i, t := range root.Tables("stock") {
		s := p.Stocks[i]
		var says *quantity.Error
		if err := p.LacksDensity(s); s.Strength.Value > 0 && t.Sound("strength", "density") && errors.As(err, &says) {
			t.FailFor(t, []string{"density"}, "strength", says.Message, says.Hint)
		}
	}
}
