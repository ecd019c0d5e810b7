package equipment

import "sync"

// classTable holds what [findClass] searches. What a table lists first is what is
// assumed when a kit does not state it.
var classTable = sync.OnceValue(func() []Class {
	var classes []Class
	for _, table := range []struct{ name, columns string }{
		{"cylinders", scaleColumns}, {"cylinders_plastic", scaleColumns}, {"flasks", glassColumns},
		{"pipettes_one_mark", glassColumns}, {"pipettes_graduated", graduatedColumns}, {"burettes", scaleColumns},
		{"pipettes_piston", allColumns}, {"syringes", allColumns}, {"printed_scales", allColumns}, {"droppers", allColumns},
	} {
		for _, row := range readTable(tableFiles, table.name, table.columns) {
			c := newClass(row)
			if table.columns != glassColumns {
				c.addScale(row)
			}
			switch table.columns {
			case graduatedColumns:
				c.DivisionTrust = row.text("division_trust")
			case allColumns:
				c.addRest(row)
			}
			classes = append(classes, c)
		}
	}
	return classes
})

const (
	glassColumns = "kind,form,standard,number,edition,class,marked," +
		"capacity_mL,division_mL,tolerance_mL,bore_mm,source,trust,bore_trust,note"
	scaleColumns     = glassColumns + ",numbered_mL,numbered_trust"
	graduatedColumns = scaleColumns + ",division_trust"
	allColumns       = scaleColumns + ",random_mL,share,below_half_fixed_mL,below_half_share,dead_space_mL,dead_space_trust"
)

func newClass(row tableRow) Class {
	return Class{
		Kind:      row.text("kind"),
		Form:      row.text("form"),
		Standard:  row.text("standard"),
		Number:    row.text("number"),
		Edition:   row.text("edition"),
		Name:      row.text("class"),
		Marked:    row.text("marked"),
		Capacity:  row.positive("capacity_mL"),
		Division:  row.positiveOrNone("division_mL"),
		Tolerance: row.positive("tolerance_mL"),
		Bore:      row.positiveOrNone("bore_mm"),
		Source:    row.text("source"),
		Trust:     row.text("trust"),
		BoreTrust: row.text("bore_trust"),
		Note:      row.text("note"),
	}
}

// addScale fills in how a scale is numbered.
func (c *Class) addScale(row tableRow) {
	c.Numbered = row.positiveOrNone("numbered_mL")
	c.NumberedTrust = row.text("numbered_trust")
}

// addRest fills in what a glass table has no columns for.
func (c *Class) addRest(row tableRow) {
	c.Random = row.positiveOrNone("random_mL")
	c.Share = row.positiveOrNone("share")
	c.BelowHalf = Sloped{row.positiveOrNone("below_half_fixed_mL"), row.positiveOrNone("below_half_share")}
	c.DeadSpace = row.positiveOrNone("dead_space_mL")
	c.DeadSpaceTrust = row.text("dead_space_trust")
}

// balanceTable is for information; no kit states a class for a balance.
var balanceTable = sync.OnceValue(func() []Class {
	var classes []Class
	for _, row := range readTable(tableFiles, "balances", "form,capacity_g,division_g,tolerance_g,random_g,source,trust,note,random_trust") {
		classes = append(classes, Class{
			Kind:      "balance",
			Form:      row.text("form"),
			Capacity:  row.positive("capacity_g"),
			Division:  row.positive("division_g"),
			Tolerance: row.positive("tolerance_g"),
			Random:    row.positive("random_g"),
			Source:    row.text("source"),
			Trust:     row.text("trust"),
			Note:      row.text("note"),

			RandomTrust: row.text("random_trust"),
		})
	}
	return classes
})
