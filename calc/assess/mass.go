package assess

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/job"
	"gaugewright/calc/pile"
	"gaugewright/calc/quantity"
	"gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// heaviest works out the mass of the longest segment of a make-up.
func (w *judge) heaviest(m segment.Makeup, pieces []segment.Piece, lines []job.Stock) {
	longest := -1
	for _, i := range m.Used() {
		if longest < 0 || pieces[i].Length > pieces[longest].Length {
			longest = i
		}
	}
	area, rho, ok := w.section()
	if longest < 0 || !ok {
		return
	}
	b := w.book
	perMetre, err := pile.LineMass(quantity.Density(basis.Figure(rho)), area.V)
	if err != nil {
		return
	}
	line := working.Put(b, pile.LineMassRule, "segment.lineMass", perMetre, figure(rho), area.In())
	mass, err := pile.SegmentMass(line.V, lines[longest].Length.V)
	if err != nil {
		return
	}
	of := working.Put(b, pile.SegmentMassRule, "segment.mass", mass, line.In(), lines[longest].Length.In(b))
	w.answer.Segments.Heaviest = &Number{V: float64(of.V), Unit: quantity.Must("t"), Decimals: 2, Ref: of.Ref}
}

// section returns the area of the pile's section and the figure of its
// density; ok is false while the section is not entered.
func (w *judge) section() (area working.Of[quantity.Area], rho string, ok bool) {
	t, b := w.pileType, w.book
	if !t.Width.Known() {
		return area, "", false
	}
	var s pile.Section
	var err error
	rule, inputs := pile.SquareAreaRule, []working.In{t.Width.In(b)}
	switch t.Shape {
	case "square":
		s, err = pile.Square(t.Width.V)
		rho = "density.concrete"
	case "round":
		s, err = pile.Circle(t.Width.V)
		rule, rho = pile.CircleAreaRule, "density.concrete"
	case "spun", "tube":
		if !t.Wall.Known() {
			return area, "", false
		}
		s, err = pile.Ring(t.Width.V, t.Wall.V)
		rule, inputs = pile.RingAreaRule, []working.In{t.Width.In(b), t.Wall.In(b)}
		rho = map[string]string{"spun": "density.spun", "tube": "density.steel"}[t.Shape]
	default:
		return area, "", false
	}
	if err != nil {
		return area, "", false
	}
	return working.Put(b, rule, "section.area", s.Area, inputs...), rho, true
}
