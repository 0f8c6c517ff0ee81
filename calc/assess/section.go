package assess

import (
	"gaugewright/calc/pile"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// section is the section of the pile: of a tapered one the smaller end, which
// carries the load as well as the larger.
type section struct {
	needs    []string
	problem  error
	material string
	density  string // figure of calc/basis; "" where none is known
	area     working.Of[quantity.Area]
	whole    pile.Section
	moment   func() working.Of[pile.SecondMoment]
	// modulus is nil while the width across the weak axis is not entered.
	modulus func() working.Of[pile.Modulus]
	thick   quantity.Length // thickest part of a steel section
}

// materials are what a shape is made of where nothing else is stated.
var materials = map[string]string{"square": "concrete", "round": "concrete", "spun": "concrete", "tube": "steel", "H": "steel", "timber": "timber"}

// section gathers the section once for everything that needs it.
func (w *judge) section() section {
	if w.sectionMade == nil {
		s := w.sectionOf()
		w.sectionMade = &s
	}
	return *w.sectionMade
}

func (w *judge) sectionOf() section {
	t, b := w.pileType, w.book
	s := section{material: t.Material}
	if s.material == "" {
		s.material = materials[t.Shape]
	}
	s.density = map[string]string{"concrete": "density.concrete", "steel": "density.steel"}[s.material]
	if t.Shape == "spun" {
		s.density = "density.spun"
	}
	if t.OtherShape {
		s.problem = &pile.InputError{Code: "pile.sectionShape", Text: t.Section, Allowed: t.Shape}
		return s
	}
	if t.Area.Known() {
		w.tabled(&s)
		return s
	}
	lengths := map[string]struct {
		known bool
		key   string
	}{
		"width": {t.Width.Known(), "field.pileTypes.width"}, "wall": {t.Wall.Known(), "field.pileTypes.wall"},
		"depth": {t.Depth.Known(), "field.pileTypes.depth"}, "web": {t.Web.Known(), "field.pileTypes.web"}, "flange": {t.Flange.Known(), "field.pileTypes.flange"},
	}
	need := func(names ...string) {
		for _, n := range names {
			if !lengths[n].known {
				s.needs = append(s.needs, lengths[n].key)
			}
		}
	}
	width := t.Width
	var areaRule, momentRule working.Rule
	var inputs []working.In
	switch t.Shape {
	case "square":
		if need("width"); len(s.needs) == 0 {
			s.whole, s.problem = pile.Square(width.V)
		}
		areaRule, momentRule, inputs = pile.SquareAreaRule, pile.SquareMomentRule, []working.In{width.In(b)}
	case "round", "timber":
		if t.Tip.Known() && (!width.Known() || t.Tip.V < width.V) {
			width = t.Tip
		}
		if !width.Known() {
			need("width")
		} else {
			s.whole, s.problem = pile.Circle(width.V)
		}
		areaRule, momentRule, inputs = pile.CircleAreaRule, pile.CircleMomentRule, []working.In{width.In(b)}
	case "spun", "tube":
		if need("width", "wall"); len(s.needs) == 0 {
			s.whole, s.problem = pile.Ring(width.V, t.Wall.V)
		}
		s.thick = t.Wall.V
		areaRule, momentRule, inputs = pile.RingAreaRule, pile.RingMomentRule, []working.In{width.In(b), t.Wall.In(b)}
	case "H":
		if need("depth", "width", "web", "flange"); len(s.needs) == 0 {
			w.hSection(&s)
		}
		return s
	default:
		s.needs = append(s.needs, "field.pileTypes.shape")
	}
	if len(s.needs) > 0 || s.problem != nil {
		return s
	}
	s.area = working.Put(b, areaRule, "section.area", s.whole.Area, inputs...)
	s.moment = func() working.Of[pile.SecondMoment] {
		return working.Put(b, momentRule, "section.moment", s.whole.Moment, inputs...)
	}
	s.modulus = func() working.Of[pile.Modulus] {
		return working.Put(b, pile.ModulusRule, "section.modulus", s.whole.Modulus, s.moment().In(), width.In(b))
	}
	return s
}

// tabled takes area and radius of gyration as typed from a table of sections.
func (w *judge) tabled(s *section) {
	t, b := w.pileType, w.book
	s.area, s.thick = t.Area.Of(b), max(t.Wall.V, t.Flange.V, t.Web.V)
	s.whole.Area = t.Area.V
	if !t.Gyration.Known() {
		return
	}
	s.whole, s.problem = pile.Tabled(t.Area.V, t.Gyration.V)
	if s.problem != nil {
		return
	}
	s.moment = func() working.Of[pile.SecondMoment] {
		return working.Put(b, pile.TabledMomentRule, "section.moment", s.whole.Moment, t.Area.In(b), t.Gyration.In(b))
	}
	if !t.Width.Known() {
		return
	}
	modulus, err := pile.ModulusOf(s.whole, t.Width.V)
	if err != nil {
		s.problem = err
		return
	}
	s.modulus = func() working.Of[pile.Modulus] {
		return working.Put(b, pile.ModulusRule, "section.modulus", modulus, s.moment().In(), t.Width.In(b))
	}
}

func (w *judge) hSection(s *section) {
	t, b := w.pileType, w.book
	plates := pile.Plates{Depth: t.Depth.V, Width: t.Width.V, Web: t.Web.V, Flange: t.Flange.V}
	if s.whole, s.problem = pile.H(plates); s.problem != nil {
		return
	}
	s.thick = max(t.Flange.V, t.Web.V)
	inputs := []working.In{t.Depth.In(b), t.Width.In(b), t.Web.In(b), t.Flange.In(b)}
	s.area = working.Put(b, pile.HAreaRule, "section.area", s.whole.Area, inputs...)
	y, z := plates.Moments()
	both := func() (working.Of[pile.SecondMoment], working.Of[pile.SecondMoment]) {
		return working.Put(b, pile.HMomentYRule, "section.momentY", y, inputs...), working.Put(b, pile.HMomentZRule, "section.momentZ", z, inputs...)
	}
	s.moment = func() working.Of[pile.SecondMoment] {
		ofY, ofZ := both()
		return working.Put(b, pile.HMomentRule, "section.moment", s.whole.Moment, ofY.In(), ofZ.In())
	}
	s.modulus = func() working.Of[pile.Modulus] {
		ofY, ofZ := both()
		return working.Put(b, pile.HModulusRule, "section.modulus", s.whole.Modulus, ofY.In(), t.Depth.In(b), ofZ.In(), t.Width.In(b))
	}
}
