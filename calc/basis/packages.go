package basis

import (
	"math"

	"gaugewright/calc/quantity"
)

// Package is a preset of parts that belong together: factor, hold, repeats. A
// person's own is as good. What a package does not have is the designer's.
type Package struct {
	ID    string
	Parts []Part
}

// Part is one field of a criterion, "hold/time", and the id of its figure,
// blank where the part is none of the package.
type Part struct{ Field, Figure string }

// partFields are the fields that make a package.
var partFields = []string{"factor", "hold/time", "hold/movement", "hold/repeats"}

var packages = []Package{
	{"still hold", []Part{{"factor", "factor.single"}, {"hold/time", "hold.time"}, {"hold/movement", "hold.movement"}}},
	{"high factor", []Part{{"factor", "factor.high"}, {"hold/time", "hold.high.time"}, {"hold/movement", "hold.high.movement"}}},
	{"repeated", []Part{{"hold/time", "hold.repeated.time"}, {"hold/repeats", "hold.repeated.repeats"}}},
	{"repeated, short pile", []Part{{"hold/time", "hold.repeated.time"}, {"hold/repeats", "hold.repeated.short"}}},
	{"long hold", []Part{{"hold/time", "hold.long.time"}, {"hold/movement", "hold.long.movement"}}},
}

// Packages lists the presets.
func Packages() []Package { return append([]Package(nil), packages...) }

// Mixed lists the parts that are not of the package with this id: those that
// are stated otherwise, with the figure of the package, and those that are
// stated and that the package does not have. stated gives a field's number in
// its coherent unit, and whether there is one. A package that is not of the list
// is a person's own: nothing is known of its parts.
func Mixed(id string, stated func(field string) (float64, bool)) []Part {
	for _, p := range packages {
		if p.ID == id {
			return p.mixed(stated)
		}
	}
	return nil
}

func (p Package) mixed(stated func(string) (float64, bool)) []Part {
	var list []Part
	for _, field := range partFields {
		v, known := stated(field)
		if !known {
			continue
		}
		part := Part{Field: field}
		for _, own := range p.Parts {
			if own.Field == field {
				part = own
			}
		}
		if part.Figure == "" || math.Abs(v-Figure(part.Figure)) > quantity.Slack*math.Abs(v) {
			list = append(list, part)
		}
	}
	return list
}
