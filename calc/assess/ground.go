package assess

import (
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// Ground is the pressure under the feet in one case.
type Ground struct {
	Case     string // "travelling", "short feet", "pressing" or "sudden loss"
	Pressure *Number
	Allowed  *Number // what it is compared with, nil where nothing is stated
	Use      *Number
	Problem  *Note
	Largest  bool
}

// ground works out the pressures under the feet: while the rig walks, with the
// body half its travel off the feet; at the set load; and after a sudden loss
// of load, when the whole weight is back at once. No case says more than statics:
// a blow is not in it.
func (w *judge) ground() {
	a, r, b := w.answer, w.rig, w.book
	if !w.hasRig || !w.hasCircuit {
		return
	}
	s := w.standing()
	need := func(known bool, key string) {
		if !known {
			a.GroundNeeds = append(a.GroundNeeds, key)
		}
	}
	a.GroundNeeds = append(a.GroundNeeds, s.needs...)
	if !s.placed {
		a.GroundNeeds = append(a.GroundNeeds, "field.rigs.halfSpacing", "field.rigs.massCentre", "field.rigs.circuits.at")
	}
	need(r.Long.Complete(), "field.rigs.feet.long")
	need(r.BodyTravel.Known(), "field.rigs.bodyTravel")
	if len(a.GroundNeeds) > 0 || s.problem != nil {
		return
	}
	weight := quantity.Force(float64(float64(r.Mass.V)+float64(r.Ballast.V)) * quantity.Gravity)
	inputs := []working.In{r.Mass.In(b), r.Ballast.In(b), figure("gravity")}
	if !s.inMass {
		weight += w.circuit.OnHead.V
		inputs = append(inputs, s.onHead)
	}
	g := working.Put(b, rig.WeightRule(s.inMass), "ground.weight", weight, inputs...)
	along := working.Put(b, rig.AlongRule, "ground.along", r.BodyTravel.V/2, r.BodyTravel.In(b))
	still := working.Of[quantity.Length]{}
	centre := r.MassCentre.Of(b)
	w.groundCase("travelling", r.Long, g, centre, along, r.Bearing.Travelling)
	if r.Short.Complete() {
		w.groundCase("short feet", r.Short, g, centre, along, r.Bearing.Travelling)
	}
	if a.Most != nil && a.State == Open {
		w.pressing(s, g)
	}
	w.groundCase("sudden loss", r.Long, g, centre, still, r.Bearing.SuddenLoss)
	largest := -1
	for i, one := range a.Ground {
		if one.Pressure != nil && (largest < 0 || one.Pressure.V > a.Ground[largest].Pressure.V) {
			largest = i
		}
	}
	if largest >= 0 {
		a.Ground[largest].Largest = true
	}
}

// pressing is the case at the set load, as high as it may be there.
func (w *judge) pressing(s standing, g working.Of[quantity.Force]) {
	a, b := w.answer, w.book
	up := working.Of[quantity.Force]{V: quantity.Force(a.Most.V), Ref: a.Most.Ref}
	if !s.inMass {
		up = working.Put(b, rig.UpRule, "ground.up", up.V-w.circuit.OnHead.V, up.In(), s.onHead)
	}
	v, e, err := rig.Resultant(g.V, up.V, s.at)
	if err != nil {
		a.Ground = append(a.Ground, Ground{Case: "pressing", Problem: &Note{Code: "ground.offFeet"}})
		return
	}
	left := working.Put(b, rig.OnFeetRule, "ground.left", v, g.In(), up.In())
	off := working.Put(b, rig.OffRule, "ground.off", e, g.In(), w.rig.MassCentre.In(b), up.In(), w.circuit.At.In(b), left.In())
	w.groundCase("pressing", w.rig.Long, left, off, working.Of[quantity.Length]{}, w.rig.Bearing.Pressing)
}

// groundCase is one case on one set of feet: the load v at e across the feet and
// t along them.
func (w *judge) groundCase(name string, feet job.Feet, v working.Of[quantity.Force], e, t working.Of[quantity.Length], bearing job.Given[quantity.Pressure]) {
	a, r, b := w.answer, w.rig, w.book
	one := Ground{Case: name}
	line, err := rig.FootLine(v.V, e.V, r.HalfSpacing.V)
	n := float64(feet.Number) / 2
	var q quantity.Pressure
	if err == nil && n >= 1 {
		q, err = rig.FootPressure(line, feet.Number/2, feet.Length.V, feet.Width.V, t.V)
	}
	switch {
	case err != nil:
		one.Problem = &Note{Code: "ground.offFeet"}
	case n < 1 || feet.Number%2 != 0:
		one.Problem = &Note{Code: "ground.evenFeet"}
	default:
		of := working.Put(b, rig.FootLineRule, "ground."+name+".line", line, v.In(), r.HalfSpacing.In(b), e.In())
		count := working.Put(b, rig.FeetOfLineRule, "ground."+name+".feet", quantity.Ratio(n), working.In{V: float64(feet.Number), Ref: feet.NumberPath})
		rule := rig.WholeFootRule
		if t.V > feet.Length.V/6 {
			rule = rig.PartFootRule
		}
		if t.Ref == "" && b.On() {
			t.Ref = "basis:ground.still"
		}
		pressure := working.Put(b, rule, "ground."+name, q, of.In(), count.In(), feet.Length.In(b), feet.Width.In(b), t.In())
		one.Pressure = &Number{V: float64(q), Unit: quantity.Must("kPa"), Decimals: 0, Ref: pressure.Ref}
		if bearing.Known() {
			one.Allowed = stated(bearing)
			one.Use = share(working.Put(b, rig.GroundUseRule, "ground."+name+".use", quantity.Ratio(float64(q)/float64(bearing.V)), pressure.In(), bearing.In(b)))
		}
	}
	a.Ground = append(a.Ground, one)
}
