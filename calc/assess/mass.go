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
	s := w.section()
	if longest < 0 || len(s.needs) > 0 || s.problem != nil || s.density == "" {
		return
	}
	b := w.book
	perMetre, err := pile.LineMass(quantity.Density(basis.Figure(s.density)), s.area.V)
	if err != nil {
		return
	}
	line := working.Put(b, pile.LineMassRule, "segment.lineMass", perMetre, figure(s.density), s.area.In())
	mass, err := pile.SegmentMass(line.V, lines[longest].Length.V)
	if err != nil {
		return
	}
	of := working.Put(b, pile.SegmentMassRule, "segment.mass", mass, line.In(), lines[longest].Length.In(b))
	w.answer.Segments.Heaviest = &Number{V: float64(of.V), Unit: quantity.Must("t"), Decimals: 2, Ref: of.Ref}
}
