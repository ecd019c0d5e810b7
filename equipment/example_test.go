package equipment_test

import (
	"fmt"

	"minim/equipment"
	"minim/uncertainty"
)

// A kit is made of values; what is not stated of a piece is as in the class tables.
func ExampleMeasure_Complete() {
	pipette := equipment.NewMeasure("1 mL pipette", "graduated")
	pipette.Capacity = 1
	if err := pipette.Complete("B", "ISO", ""); err != nil {
		fmt.Println(err)
	}
	fmt.Printf("±%v mL, lines %v mL apart, numbers %v mL apart\n", pipette.Bias.Limit, pipette.Division, pipette.Numbered)

	var notes equipment.Notes
	model := new(uncertainty.Model)
	volume, err := pipette.Deliver(equipment.Use{Model: model, Notes: &notes, Step: uncertainty.Owner{Kind: uncertainty.OneUse, Name: "example", Step: 1}, Marks: 1, BenchReading: equipment.Careful}, 1)
	if err != nil {
		fmt.Println(err)
	}
	a, err := model.Propagate(volume, 0.95)
	fmt.Printf("%.3f mL with u = %.4f mL, %v\n", a.Value, a.StandardUncertainty, err)

	unmarked := equipment.NewMeasure("flask", "flask")
	unmarked.Capacity = 50
	fmt.Println(unmarked.Complete("", "", ""))
	// Output:
	// ±0.01 mL, lines 0.01 mL apart, numbers 0.1 mL apart
	// 1.000 mL with u = 0.0042 mL, <nil>
	// nothing says how good the flask is
}
