package job

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/demand"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Criterion is what the design demands of a set. Scheme is one of the choices
// of its field; blank means a single factor.
type Criterion struct {
	ID, Path, Name, Package, Scheme string
	Basis, HoldBasis                string // who says so: of the factor, of the hold
	Factor                          Given[quantity.Ratio]
	HoldTime                        Given[quantity.Time]
	HoldMovement                    Given[quantity.Length]
	HoldRepeats                     int
	HasRepeats                      bool
	FoundingRule                    string
	LeastLoad                       Given[quantity.Force]
	Credit                          demand.Credit
	CreditOn                        string
	node                            *document.Node
}

// Criterion returns the criterion with this id.
func (j Job) Criterion(id string) (c Criterion, ok bool) {
	n, path := j.thing("criteria", id)
	if n == nil {
		return Criterion{}, false
	}
	at, hold, credit := reader{n, path}, n.Get("hold"), n.Get("credit")
	c = Criterion{
		ID: id, Path: path, Name: n.Get("name").Text(), Package: n.Get("package").Text(), Scheme: n.Get("scheme").Text(),
		Basis: n.Get("basis").Text(), HoldBasis: hold.Get("basis").Text(), Factor: at.ratio("factor"),
		HoldTime: read[quantity.Time](at, "hold/time", quantity.Times), HoldMovement: at.length("hold/movement"),
		FoundingRule: n.Get("foundingRule").Text(), LeastLoad: at.force("leastLoad"),
		Credit: demand.Credit{By: credit.Get("by").Text(), Why: credit.Get("why").Text()}, CreditOn: credit.Get("on").Text(), node: n,
	}
	c.HoldRepeats, c.HasRepeats = count(hold.Get("repeats"))
	return c, true
}

// Mixed lists the parts that are not of the preset package that the criterion
// names; see [basis.Mixed].
func (c Criterion) Mixed() []basis.Part {
	return basis.Mixed(c.Package, func(field string) (float64, bool) {
		switch field {
		case "factor":
			return float64(c.Factor.V), c.Factor.Known()
		case "hold/time":
			return float64(c.HoldTime.V), c.HoldTime.Known()
		case "hold/movement":
			return float64(c.HoldMovement.V), c.HoldMovement.Known()
		}
		return float64(c.HoldRepeats), c.HasRepeats
	})
}

// MixedBasis says that factor and hold are said to come from different places.
func (c Criterion) MixedBasis() bool {
	return c.Basis != "" && c.HoldBasis != "" && c.Basis != c.HoldBasis
}

// Loads are the loads of one pile. What a pile states goes before what its
// criterion states for all.
type Loads struct {
	Working, Design         Given[quantity.Force]
	Drag, DugAway, Settling Given[quantity.Force]
	at                      reader
}

// Loads returns the loads of the pile with this id.
func (j Job) Loads(pile string) (Loads, bool) {
	n, path := j.thing("piles", pile)
	at := reader{n, path}
	return Loads{Working: at.force("workingLoad"), Design: at.force("designAction"), Drag: at.force("drag"),
		DugAway: at.force("dugAway"), Settling: at.force("settling"), at: at}, n != nil
}

// Action returns the design action of a combination of the criterion.
func (l Loads) Action(combination string) Given[quantity.Force] {
	return l.at.force("actions/" + document.Escape(combination) + "/load")
}

// lacking gathers the keys of fields that are not entered.
type lacking []string

func (l *lacking) need(key string) {
	for _, k := range *l {
		if k == key {
			return
		}
	}
	*l = append(*l, key)
}

// needs hands a quantity on, and notes its key where it is not entered.
func needs[T ~float64](l *lacking, g Given[T], key string, b *working.Book) working.Of[T] {
	if !g.Known() {
		l.need(key)
		return working.Of[T]{}
	}
	return g.Of(b)
}

// entered hands a quantity on where it is entered; else it is zero.
func entered[T ~float64](g Given[T], b *working.Book) working.Of[T] {
	if !g.Known() {
		return working.Of[T]{}
	}
	return g.Of(b)
}

// orPreset hands a ratio on, or the figure of calc/basis where none is stated.
func orPreset(g Given[quantity.Ratio], figure string, b *working.Book) working.Of[quantity.Ratio] {
	if g.Known() {
		return g.Of(b)
	}
	return working.Of[quantity.Ratio]{V: quantity.Ratio(basis.Figure(figure)), Ref: "basis:" + figure}
}

// Demand returns the scheme of the criterion with its inputs for a pile, and the
// keys of the fields that are not entered ("field.criteria.factor"). The scheme
// is to be used only where none is lacking.
func (c Criterion) Demand(l Loads, b *working.Book) (demand.Scheme, []string) {
	var miss lacking
	at := reader{c.node, c.Path}
	switch c.Scheme {
	case "strength reduction":
		return c.reduction(l, at, b, &miss), miss
	case "static tests":
		return c.tests(l, at, b, &miss), miss
	case "resistance factor":
		return demand.ResistanceFactor{
			Load:   needs(&miss, l.Design, "field.piles.designAction", b),
			Factor: needs(&miss, at.ratio("resistanceFactor"), "field.criteria.resistanceFactor", b),
			Test:   c.node.Get("resistanceTest").Text(), Credit: c.Credit,
		}, miss
	}
	return demand.Single{
		WorkingLoad: needs(&miss, l.Working, "field.piles.workingLoad", b),
		Factor:      needs(&miss, c.Factor, "field.criteria.factor", b),
	}, miss
}

func (c Criterion) reduction(l Loads, at reader, b *working.Book, miss *lacking) demand.Reduction {
	n := c.node.Get("reduction")
	s := demand.Reduction{
		Action: needs(miss, l.Design, "field.piles.designAction", b), Basic: entered(at.ratio("reduction/basic"), b),
		Risk: demand.Risk{Average: entered(at.ratio("reduction/risk"), b), Redundancy: n.Get("redundancy").Text()},
		Test: n.Get("test").Text(), Tested: entered(at.ratio("reduction/tested"), b), Credit: c.Credit,
	}
	unrated := false
	for _, key := range basis.RiskKeys {
		if r := at.ratio("reduction/ratings/" + key); r.Known() {
			s.Risk.Ratings = append(s.Risk.Ratings, demand.Rating{Key: key, Rating: r.Of(b),
				Weight: orPreset(at.ratio("reduction/weights/"+key), "risk.weight."+key, b)})
		} else {
			unrated = true
		}
	}
	if s.Basic.V == 0 {
		switch {
		case s.Risk.Average.V == 0 && len(s.Risk.Ratings) == 0:
			miss.need("field.criteria.reduction.basic")
		case s.Risk.Average.V == 0 && unrated:
			miss.need("field.criteria.reduction.ratings")
		case s.Risk.Redundancy == "":
			miss.need("field.criteria.reduction.redundancy")
		}
	}
	if s.Test == "static" || s.Test == "dynamic" {
		s.Share = needs(miss, at.ratio("reduction/share"), "field.criteria.reduction.share", b)
	}
	return s
}

func (c Criterion) tests(l Loads, at reader, b *working.Book, miss *lacking) demand.Tests {
	s := demand.Tests{Stiff: c.node.Get("stiff").Text() == "yes", Credit: c.Credit}
	list := c.node.Get("tests")
	for _, id := range ids(list, "name") {
		n, place := list.Get(id), "tests/"+document.Escape(id)
		s.Tests = append(s.Tests, demand.Test{Name: n.Get("name").Text(), On: n.Get("on").Text(), Kind: n.Get("kind").Text(),
			Resistance: needs(miss, at.force(place+"/resistance"), "field.criteria.tests.resistance", b),
			SetLoad:    entered(at.force(place+"/setLoad"), b)})
	}
	if len(s.Tests) == 0 {
		miss.need("field.criteria.tests.resistance")
	}
	xi1, xi2 := demand.CorrelationFigures(len(s.Tests))
	s.Xi1, s.Xi2 = orPreset(at.ratio("xi1"), xi1, b), orPreset(at.ratio("xi2"), xi2, b)
	for _, id := range c.Combinations() {
		one := demand.Combination{Action: needs(miss, l.Action(id), "field.piles.actions.load", b)}
		if typed, figure := at.ratio("combinations/"+document.Escape(id)+"/factor"), c.SetFigure(id); figure == "" {
			one.Factor = needs(miss, typed, "field.criteria.combinations.factor", b)
		} else {
			one.Factor = orPreset(typed, figure, b)
		}
		s.Combinations = append(s.Combinations, one)
	}
	if len(s.Combinations) == 0 {
		miss.need("field.criteria.combinations.factor")
	}
	return s
}

// Combinations lists the ids of the combinations, in the order in which
// [Criterion.Demand] hands them on.
func (c Criterion) Combinations() []string { return ids(c.node.Get("combinations"), "name") }

// CombinationName returns the name of a combination.
func (c Criterion) CombinationName(id string) string {
	return c.node.Get("combinations").Get(id).Get("name").Text()
}

// SetFigure is the factor on the resistance that a table of calc/basis has for
// the kind of pile and the set that a combination names; it counts where none is
// typed. "" for none.
func (c Criterion) SetFigure(combination string) string {
	return basis.SetFigure(c.node.Get("pileKind").Text(), c.node.Get("combinations").Get(combination).Get("set").Text())
}

// Ground returns what the ground adds for a pile, and the keys of the fields
// that are not entered. Resistance that will be lost is that of the pile, or
// that of the criterion, or made of its layers, whose steps are put. section gives
// the perimeter of the pile's section, zero where it is not known; it is asked
// only where layers need one and the criterion states none. The error is an
// [*demand.InputError].
func (c Criterion) Ground(l Loads, section func() working.Of[quantity.Length], b *working.Book) (g demand.Ground, _ []string, err error) {
	var miss lacking
	at, up := reader{c.node, c.Path}, c.node.Get("setUp")
	g.SetUp = demand.SetUp{Ratio: entered(at.ratio("setUp/ratio"), b), WholePile: up.Get("wholePile").Text(), LongTerm: up.Get("longTerm").Text(),
		Test: up.Get("test").Text(), By: up.Get("by").Text(), On: up.Get("on").Text()}
	g.Drag = entered(either(l.Drag, at.force("drag")), b)
	if g.Drag.V != 0 {
		g.DragFactor = needs(&miss, at.ratio("dragFactor"), "field.criteria.dragFactor", b)
	}
	perimeter := entered(at.length("perimeter"), b)
	for _, lost := range []struct {
		to           *working.Of[quantity.Force]
		own, typed   Given[quantity.Force]
		symbol, zone string
	}{
		{&g.DugAway, l.DugAway, at.force("dugAway"), "T", "dug away"},
		{&g.Settling, l.Settling, at.force("settling"), "N", "settling"},
	} {
		layers := c.layers(lost.zone, at, b, &miss)
		if lost.own.Known() || len(layers) == 0 {
			*lost.to = entered(either(lost.own, lost.typed), b)
			continue
		}
		if lost.typed.Known() {
			return g, miss, &demand.InputError{Code: "demand.typedAndLayers", Text: lost.typed.Stated.Text()}
		}
		if perimeter.V == 0 {
			perimeter = section()
		}
		if perimeter.V == 0 {
			miss.need("field.criteria.perimeter")
		}
		if len(miss) > 0 {
			continue
		}
		if *lost.to, err = demand.Shaft(b, lost.symbol, layers, perimeter); err != nil {
			return g, miss, err
		}
	}
	return g, miss, nil
}

func either(own, all Given[quantity.Force]) Given[quantity.Force] {
	if own.State == Blank {
		return all
	}
	return own
}

func (c Criterion) layers(zone string, at reader, b *working.Book, miss *lacking) []demand.Layer {
	var list []demand.Layer
	all := c.node.Get("layers")
	for _, id := range ids(all, "name") {
		if all.Get(id).Get("zone").Text() != zone {
			continue
		}
		place := "layers/" + document.Escape(id)
		list = append(list, demand.Layer{
			Thickness:  needs(miss, at.length(place+"/thickness"), "field.criteria.layers.thickness", b),
			Resistance: needs(miss, at.pressure(place+"/resistance"), "field.criteria.layers.resistance", b),
		})
	}
	return list
}
