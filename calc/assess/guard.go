package assess

import (
	"strconv"

	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// doubt is what is known about the doubt in the loads of a circuit.
type doubt struct {
	window.Doubt
	mid    working.In
	inputs []working.In // eta, A, W, u_p, u_eta, u_W, k: what every guard has
	needs  []string
}

// guarding gathers the doubt once, where the job wants the guard. What it
// needs is asked for: blank is not zero.
func (w *judge) guarding(c window.Circuit, in inputs) *doubt {
	if w.Guard() != "yes" {
		return nil
	}
	if w.doubt != nil {
		return w.doubt
	}
	d := &doubt{}
	w.doubt = d
	g, head, b := w.gauge, w.circuit.OnHeadUncertainty, w.book
	need := func(known bool, key string) {
		if !known {
			d.needs = append(d.needs, key)
		}
	}
	celsius, err := strconv.ParseFloat(g.Celsius, 64)
	need(g.Class.Known(), "field.gauges.class")
	need(g.FullScale.Known(), "field.gauges.fullScale")
	need(err == nil, "field.gauges.celsius")
	need(g.ZeroError.Known(), "field.gauges.zeroError")
	need(head.Known(), "field.rigs.circuits.onHeadUncertainty")
	if len(d.needs) > 0 {
		return d
	}
	perKelvin, k := figure("doubt.perKelvin"), figure("guard.coverage")
	from := figure("doubt.warmthFrom")
	warmth := celsius - from.V
	reading := working.Put(b, rig.ReadingDoubtRule, "doubt.reading", rig.ReadingDoubt(rig.Doubtful{
		Class: g.Class.V, Span: g.FullScale.V, Division: c.Division, Warmth: warmth, PerKelvin: quantity.Ratio(perKelvin.V), Zero: g.ZeroError.V,
	}), g.Class.In(b), g.FullScale.In(b), in.division, perKelvin,
		working.Put(b, rig.WarmthRule, "doubt.warmth", quantity.Ratio(warmth), working.In{V: celsius, Ref: g.Path + "/celsius"}, from).In(), g.ZeroError.In(b))
	efficiency := working.Put(b, rig.EfficiencyDoubtRule, "doubt.efficiency", rig.EfficiencyDoubt(c.Low, c.High), in.low, in.high)
	onHead := working.Put(b, rig.HeadDoubtRule, "doubt.onHead", rig.HeadDoubt(head.V), head.In(b))
	d.Doubt = window.Doubt{Reading: reading.V, Efficiency: efficiency.V, OnHead: onHead.V, Coverage: quantity.Ratio(k.V)}
	d.mid = working.Put(b, window.MidRule, "guard.mid", c.Mid(), in.low, in.high).In()
	d.inputs = []working.In{d.mid, in.area, in.onHead, reading.In(), efficiency.In(), onHead.In(), k}
	w.answer.Guarded = true
	return d
}

// guardSet moves the set reading up where the guard is on; ok is false while
// something for the guard is not entered, or no reading is certain.
func (w *judge) guardSet(c window.Circuit, in inputs, load working.Of[quantity.Force], set working.Of[quantity.Pressure]) (of working.Of[quantity.Pressure], ok bool) {
	w.plainSet = set.V
	d := w.guarding(c, in)
	if d == nil {
		return set, true
	}
	if len(d.needs) > 0 {
		return set, false
	}
	p, n, ok := c.GuardedSet(load.V, d.Doubt)
	if !ok {
		return set, false
	}
	b := w.book
	of = working.Put(b, window.GuardedSetRule, "guard.set", p, set.In(), working.In{V: float64(n), Ref: "search:"}, in.division)
	working.Prove(b, window.GuardedSetProof, "guard.set.proof", of.Ref, append([]working.In{of.In(), load.In()}, d.inputs...)...)
	working.Prove(b, window.GuardedSetLess, "guard.set.less", of.Ref, append([]working.In{of.In(), load.In(), in.division}, d.inputs...)...)
	w.answer.Uncertainty = w.force(working.Put(b, window.ExpandedRule, "guard.uncertainty", c.Expanded(p, d.Doubt),
		of.In(), d.mid, in.area, d.inputs[3], d.inputs[4], d.inputs[5], d.inputs[6]))
	return of, true
}

// guardLimit moves the reading of a load limit down where the guard is on. A
// limit that not even the reading 0 keeps for certain has the reading 0.
func (w *judge) guardLimit(c window.Circuit, in inputs, limit working.In, name string, reading working.Of[quantity.Pressure]) working.Of[quantity.Pressure] {
	d := w.guarding(c, in)
	if d == nil || len(d.needs) > 0 || reading.V <= 0 {
		return reading
	}
	p, n, ok := c.GuardedLimit(quantity.Force(limit.V), d.Doubt)
	b := w.book
	if !ok {
		n = int(quantity.Divisions(float64(reading.V), float64(c.Division), false))
		p = reading.V - quantity.Pressure(float64(n)*float64(c.Division))
		return working.Put(b, window.GuardedLimitRule, name+".guarded", p, reading.In(), working.In{V: float64(n), Ref: "search:"}, in.division)
	}
	of := working.Put(b, window.GuardedLimitRule, name+".guarded", p, reading.In(), working.In{V: float64(n), Ref: "search:"}, in.division)
	working.Prove(b, window.GuardedLimitProof, name+".guarded.proof", of.Ref, append([]working.In{of.In(), limit}, d.inputs...)...)
	working.Prove(b, window.GuardedLimitMore, name+".guarded.more", of.Ref, append([]working.In{of.In(), limit, in.division}, d.inputs...)...)
	return of
}

// guardRefused says why there is no guarded reading.
func (w *judge) guardRefused() {
	a := w.answer
	a.State = Refused
	if d := w.doubt; d != nil && len(d.needs) > 0 {
		a.State = Incomplete
		a.Needs = append(a.Needs, d.needs...)
		return
	}
	a.Reasons = append(a.Reasons, Note{Code: "reason.noGuardedReading"})
}

// besideGuard sets the window without the guard beside the guarded one, where
// only one of them is open.
func (w *judge) besideGuard(judged []window.Limit) {
	a := w.answer
	if !a.Guarded || a.Set == nil || len(judged) == 0 {
		return
	}
	plain := append([]window.Limit(nil), judged...)
	for i := range plain {
		plain[i].Reading = w.plain[i]
	}
	v := window.Judge(w.plainSet, w.plainSet, true, plain)
	if v.Open == (a.State == Open) || v.Governs < 0 {
		return
	}
	unit, digits := w.pressureUnit()
	set := Number{V: float64(w.plainSet), Unit: unit, Decimals: digits, Rounded: "up", Ref: w.book.Place("setReading")}
	never := Number{V: float64(v.Never), Unit: unit, Decimals: digits, Rounded: "down", Ref: w.book.Place("limit." + string(judged[v.Governs].Kind) + ".reading")}
	a.PlainSet, a.PlainNever = &set, &never
	a.Notes = append(a.Notes, Note{"note.openWithoutGuard", []string{set.Text(w.Sign()), never.Text(w.Sign())}})
}

