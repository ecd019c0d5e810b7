package equipment

import "cmp"

// NewMeasure returns a measure with what holds for its kind where nothing else is stated:
// one piece, adjusted as the kind is, with a limit of error of the usual shape. What is
// stated is to be set, and the rest filled in by [Measure.Complete].
func NewMeasure(name string, kind Kind) *Measure {
	return &Measure{
		Name: name, Kind: kind, Count: 1, Ex: kind.Traits().ex,
		Bias: bias{Shape: kind.Traits().shape, ShapeAssumed: true, BetweenMarks: 0.5},
	}
}

// Complete fills in what is not stated of a measure from the class table: the limit of its
// error unless [Measure].Bias.Stated, its division, bore, scatter and numbered marks. Class, standard
// and form are as stated, "" where they are not; kinds without letters have a class of their
// own, which is assumed. The error is a *quantity.Error: nothing says how good the piece is,
// or the tables do not bear out what is stated.
func (k *Measure) Complete(class, standard, form string) error {
	stated := Class{Name: class, Standard: standard, Form: form}
	usualDrop := k.Kind.Traits().Counts && k.Capacity == 0
	if usualDrop {
		k.Capacity = standardDrop
	}
	if k.DropOf != "" && IsWater(k.DropOf) {
		k.DropOf = ""
	}
	numbered, err := 0.0, k.unlimited(stated)
	if err == nil && !k.Kind.Traits().PenLine && (stated.Name != "" || !k.Kind.Traits().Lettered) {
		numbered, err = k.fromClass(stated, usualDrop)
	}
	k.number(numbered)
	if k.Class != nil && !k.Bias.Stated {
		k.Bias.ClassLimit = true
		k.Bias.Limit, k.Bias.ByClass = k.Class.Tolerance, k.Class.varies()
		if k.Kind.Traits().Counts && k.Capacity != k.Class.Capacity {
			k.Bias.Limit = k.Class.limit(k.Capacity)
		}
	}
	return err
}

// unlimited is the error of a piece of which nothing says how good it is.
func (k *Measure) unlimited(stated Class) error {
	name := cmp.Or(k.Name, string(k.Kind), "measure")
	switch {
	case k.Bias.Stated:
	case k.Kind.Traits().PenLine && k.Line.With == nil:
		return refuse("nothing says how good the line of the "+name+" is", "state what it was set with, set-with = \"50 mL cylinder\", or its tolerance")
	case k.Kind.Traits().Lettered && stated.Name == "":
		return refuse("nothing says how good the "+name+" is", "state its class (\"A\" or \"B\"), or its own tolerance")
	case k.Kind.Traits().ex && !k.Ex && k.Kind.Traits().Lettered:
		return refuse("the limits of class "+stated.Name+" are for what is adjusted to deliver, and the "+name+" is marked In", "state its own tolerance")
	}
	return nil
}

// fromClass takes what is not stated from the row of the class table that fits, and returns
// how far apart the numbered marks are there. Where the limit is stated, the row need not be there.
func (k *Measure) fromClass(q Class, usualDrop bool) (numbered float64, err error) {
	q.Kind, q.Capacity, q.Division = string(k.Kind), k.Capacity, k.Division
	switch {
	case k.Kind.Traits().Counts && k.DropOf != "" && q.Standard != "Ph. Eur.":
		q.Capacity, q.Form = 1, "calibrated"
	case k.Kind.Traits().Counts:
		q.Capacity = standardDrop
	}
	c, err := findClass(q)
	switch {
	case err != nil && k.Bias.Stated:
		return 0, nil
	case err != nil:
		return 0, err
	}
	// What is not stated of a piece whose limit is its own may be that of a class: the scatter of
	// a piston, the dead space of a syringe, the drop of a dropper.
	completes := c.Random > 0 && !k.Repeatability.Known || c.DeadSpace > 0 && !k.Retained.Known || usualDrop
	if k.Bias.Stated && !k.Kind.Traits().Lettered && !completes {
		return c.Numbered, nil
	}
	k.take(c)
	k.StandardAssumed = q.Standard == "" && c.Standard != ""
	return c.Numbered, nil
}

// take fills in the figures of a class that the kit does not state.
func (k *Measure) take(c Class) {
	k.Class = &c
	k.Division, k.Bore = cmp.Or(k.Division, c.Division), cmp.Or(k.Bore, c.Bore)
	if !k.Repeatability.Known {
		k.Random = c.Random
	}
	if k.Bore == 0 && k.Kind.Traits().Read {
		other, err := findClass(Class{Kind: c.Kind, Form: c.Form, Standard: "ASTM", Name: c.Name, Capacity: c.Capacity, Division: c.Division})
		if err == nil && other.Bore > 0 {
			k.Bore, k.BoreAssumed = other.Bore, true
		}
	}
}
