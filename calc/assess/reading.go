package assess

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// figure hands a figure of calc/basis to a step.
func figure(id string) working.In { return working.In{V: basis.Figure(id), Ref: "basis:" + id} }

// orFigure takes the stated ratio, or the preset where none is stated.
func orFigure(b *working.Book, g job.Given[quantity.Ratio], id string) working.In {
	if g.Known() {
		return g.In(b)
	}
	return figure(id)
}

// need notes a field that is not entered.
func (w *judge) need(key string) { w.answer.Needs = append(w.answer.Needs, key) }

// reading judges the window of the pile: set load, set reading, limits.
func (w *judge) reading() {
	a, b := w.answer, w.book

	setLoad, hasLoad, refused := w.setLoad()
	c, in, ready := w.gauging()
	var exactSet quantity.Pressure
	var set working.Of[quantity.Pressure]
	if hasLoad && ready {
		exactSet = rig.Reading(setLoad.V, c.OnHead, c.Low, c.Area)
		set = working.Put(b, window.SetReadingRule, "setReading", c.SetReading(setLoad.V), setLoad.In(), in.onHead, in.low, in.area, in.division)
		working.Prove(b, window.SetProof, "setReading.proof", set.Ref, in.low, in.area, set.In(), in.onHead, setLoad.In(), in.division)
		if set, ready = w.guardSet(c, in, setLoad, set); !ready {
			w.limits(c, in, false, set, false)
			w.guardRefused()
			return
		}
		a.Set = w.pressure(set, "up")
		a.LoadAtSet = w.force(working.Put(b, rig.LoadRule, "loadAtSet", rig.Load(c.Low, c.Area, set.V, c.OnHead), in.low, in.area, set.In(), in.onHead))
		a.Most = w.force(working.Put(b, rig.LoadRule, "mostAtSet", rig.Load(c.High, c.Area, set.V, c.OnHead), in.high, in.area, set.In(), in.onHead))
	}

	judged := w.limits(c, in, ready, set, a.Set != nil)
	verdict := window.Judge(exactSet, set.V, a.Set != nil, judged)
	if verdict.Governs >= 0 && ready {
		a.Governs = verdict.Governs
		var inputs []working.In
		for i, l := range judged {
			if l.State == window.Entered {
				inputs = append(inputs, working.In{V: float64(l.Reading), Ref: a.Limits[i].Reading.Ref})
			}
		}
		a.Never = w.pressure(working.Put(b, window.NeverRule(judged), "never", verdict.Never, inputs...), "down")
	}
	if !w.hasType {
		w.need("field.piles.type")
	}
	w.conclude(c, judged, verdict, exactSet)
	if refused {
		a.State = Refused
	}
}

// inputs are the values of a circuit on their way into steps.
type inputs struct{ area, onHead, low, high, division working.In }

// gauging gathers what a reading depends on; ready is false while something of
// it is not entered, and what that is stands in the needs.
func (w *judge) gauging() (c window.Circuit, in inputs, ready bool) {
	b := w.book
	switch {
	case !w.hasRig:
		w.need("field.piles.rig")
		return c, in, false
	case !w.hasCircuit:
		w.need("field.piles.circuit")
		return c, in, false
	}
	before := len(w.answer.Needs)
	area, hasArea := w.area()
	if !hasArea {
		w.need("field.rigs.circuits.groups")
	}
	if !w.circuit.OnHead.Known() {
		w.need("field.rigs.circuits.onHead")
	}
	if !w.circuit.Low.Known() {
		w.need("field.rigs.circuits.efficiency.low")
	}
	if !w.hasGauge {
		w.need("field.rigs.circuits.gauge")
	} else if !w.gauge.Division.Known() {
		w.need("field.gauges.division")
	}
	if len(w.answer.Needs) > before {
		return c, in, false
	}
	in = inputs{
		area: area.In(), onHead: w.circuit.OnHead.In(b), low: w.circuit.Low.In(b),
		high: orFigure(b, w.circuit.High, "rig.efficiency.limit"), division: w.gauge.Division.In(b),
	}
	c = window.Circuit{
		Area: area.V, OnHead: w.circuit.OnHead.V, Low: w.circuit.Low.V, High: quantity.Ratio(in.high.V), Division: w.gauge.Division.V,
	}
	w.answer.Low = stated(w.circuit.Low)
	w.answer.High = &Number{V: in.high.V, Unit: quantity.Must(""), Decimals: 2, Ref: in.high.Ref}
	if w.circuit.High.Known() {
		w.answer.High = stated(w.circuit.High)
	}
	if c.Low > c.High {
		w.answer.Reasons = append(w.answer.Reasons, Note{"reason.efficiency", []string{w.answer.Low.Text(w.Sign()), w.answer.High.Text(w.Sign())}})
		w.need("field.rigs.circuits.efficiency.low")
		return c, in, false
	}
	w.answer.Single = w.circuit.High.Known() && w.circuit.Low.V == w.circuit.High.V
	return c, in, true
}

func (w *judge) area() (working.Of[quantity.Area], bool) {
	groups, complete := w.circuit.Cylinders()
	if !complete {
		return working.Of[quantity.Area]{}, false
	}
	area, err := rig.Area(groups)
	if err != nil {
		return working.Of[quantity.Area]{}, false
	}
	if !w.book.On() {
		w.answer.Area = number(working.Of[quantity.Area]{V: area}, quantity.Must("cm2"))
		return working.Of[quantity.Area]{V: area}, true
	}
	of := working.Put(w.book, rig.AreaRule(groups), "area", area, rig.AreaInputs(groups, func(g int, name string) string {
		return w.circuit.Groups[g].Path + "/" + name
	})...)
	w.answer.Area = number(of, quantity.Must("cm2"))
	return of, true
}

// limits works out the four required limits, and those that count where they
// are entered.
func (w *judge) limits(c window.Circuit, in inputs, ready bool, set working.Of[quantity.Pressure], hasSet bool) []window.Limit {
	b := w.book
	ofPile := w.pileLimit()
	list := []Limit{w.circuitLimit(), ofPile, w.reactionLimit(), w.gaugeLimit(), w.freeLimit(ofPile), w.gripLimit()}
	judged := make([]window.Limit, len(list))
	w.plain = make([]quantity.Pressure, len(list))
	for i := range list {
		l := &list[i]
		judged[i] = window.Limit{Kind: l.Kind, State: l.State}
		if l.State != window.Entered || !ready {
			continue
		}
		name := "limit." + string(l.Kind)
		value := working.In{V: l.Value.V, Ref: l.Value.Ref}
		var reading working.Of[quantity.Pressure]
		if l.Value.Unit.Dim == quantity.Pressures {
			limit := quantity.Pressure(l.Value.V)
			judged[i].Exact = limit
			reading = working.Put(b, window.PressureReadingRule, name+".reading", c.PressureReading(limit), value, in.division)
			w.plain[i] = reading.V
			if hasSet {
				l.Use = share(working.Put(b, window.PressureUseRule, name+".use", quantity.Ratio(float64(set.V)/float64(limit)), set.In(), value))
			}
		} else {
			limit := quantity.Force(l.Value.V)
			judged[i].Exact = rig.Reading(limit, c.OnHead, c.High, c.Area)
			w.plain[i], reading = w.loadReading(c, in, value, name)
			if n := l.Pitching; n != nil {
				_, pitching := w.loadReading(c, in, working.In{V: n.V, Ref: n.Ref}, "pitching")
				l.PitchingReading = w.pressure(pitching, "down")
			}
			if hasSet {
				l.Use = share(working.Put(b, window.UseRule, name+".use", c.Use(set.V, limit), in.high, in.area, set.In(), in.onHead, value))
			}
		}
		judged[i].Reading = reading.V
		l.Reading = w.pressure(reading, "down")
	}
	w.answer.Limits = list
	return judged
}

// loadReading is the reading of a limit that is a load, without the guard and
// as the guard has it.
func (w *judge) loadReading(c window.Circuit, in inputs, limit working.In, name string) (plain quantity.Pressure, of working.Of[quantity.Pressure]) {
	of = working.Put(w.book, window.LimitReadingRule, name+".reading", c.LimitReading(quantity.Force(limit.V)), limit, in.onHead, in.high, in.area, in.division)
	working.Prove(w.book, window.LimitProof, name+".reading.proof", of.Ref, in.high, in.area, of.In(), in.onHead, limit, in.division)
	return of.V, w.guardLimit(c, in, limit, name, of)
}

func share(q working.Of[quantity.Ratio]) *Number {
	return &Number{V: float64(q.V), Unit: quantity.Must("%"), Decimals: 0, Ref: q.Ref}
}

func (w *judge) circuitLimit() Limit {
	l := Limit{Kind: window.CircuitPressure}
	switch {
	case !w.hasCircuit:
		l.Needs = []string{"field.piles.circuit"}
	case w.circuit.PressureWaived:
		l.State, l.Waiver = window.Waived, w.circuit.Waiver
	case w.circuit.MaxPressure.Known():
		l.State, l.Value = window.Entered, stated(w.circuit.MaxPressure)
	default:
		l.Needs = []string{"field.rigs.circuits.maxPressure"}
	}
	return l
}

func (w *judge) gaugeLimit() Limit {
	l := Limit{Kind: window.Gauge}
	switch {
	case !w.hasGauge:
		l.Needs = []string{"field.rigs.circuits.gauge"}
	case w.gauge.Waived:
		l.State, l.Waiver = window.Waived, w.gauge.Waiver
	case w.gauge.FullScale.Known():
		b := w.book
		c := orFigure(b, w.gauge.Share, "gauge.share")
		of := working.Put(b, rig.GaugeRule, "limit.gauge", rig.GaugeLimit(quantity.Ratio(c.V), w.gauge.FullScale.V), c, w.gauge.FullScale.In(b))
		l.State, l.Value = window.Entered, w.pressure(of, "")
		l.Value.Decimals++
	default:
		l.Needs = []string{"field.gauges.fullScale"}
	}
	return l
}
