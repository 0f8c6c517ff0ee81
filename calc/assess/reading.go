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
	y, ready := w.gauging()
	var exactSet quantity.Pressure
	var set working.Of[quantity.Pressure]
	if hasLoad && ready {
		var err error
		if exactSet, set, err = w.setReading(y, "setReading", setLoad.In()); err != nil {
			w.limits(y, false, set)
			w.refuse(*w.fault(err))
			return
		}
		if set, ready = w.guardSet(y, set, setLoad.In()); !ready {
			w.limits(y, false, set)
			w.guardRefused()
			return
		}
		a.Set = w.pressure(set, "up")
		low, _ := w.loadAt(y, "loadAtSet", set.In(), y.low)
		high := low
		if !y.by.jacks() {
			high, _ = w.loadAt(y, "mostAtSet", set.In(), y.high)
		}
		a.LoadAtSet, a.Most = w.force(low), w.force(high)
		w.uncertain(y, set.In())
	}

	judged := w.limits(y, ready, set)
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
	w.conclude(judged, verdict, exactSet)
	if refused || w.refused {
		a.State = Refused
	}
}

// refuse says that what was entered cannot give a reading.
func (w *judge) refuse(why Note) {
	w.refused = true
	w.answer.State = Refused
	w.answer.Reasons = append(w.answer.Reasons, why)
}

// gauging gathers what a reading depends on; ready is false while something of
// it is not entered, and what that is stands in the needs.
func (w *judge) gauging() (y way, ready bool) {
	b := w.book
	switch {
	case !w.hasRig:
		w.need("field.piles.rig")
		return y, false
	case !w.hasCircuit:
		w.need("field.piles.circuit")
		return y, false
	}
	before := len(w.answer.Needs)
	chosen := w.choose(w.circuit, w.pile.Rig)
	w.answer.Needs = append(w.answer.Needs, chosen.needs...)
	y.by = chosen.by
	w.answer.Certificate = w.used(y.by)
	w.unused = chosen.unused
	area, hasArea := w.area()
	if !hasArea && !y.by.jacks() {
		w.need("field.rigs.circuits.groups")
	}
	if !w.circuit.OnHead.Known() && y.gauging(working.In{}).HeadCounts() {
		w.need("field.rigs.circuits.onHead")
	}
	if !w.circuit.Low.Known() && !y.by.jacks() && chosen.refused == nil && len(chosen.needs) == 0 {
		w.need("field.rigs.circuits.efficiency.low")
	}
	if !w.hasGauge {
		w.need("field.rigs.circuits.gauge")
	} else if !w.gauge.Division.Known() {
		w.need("field.gauges.division")
	}
	if chosen.refused != nil {
		w.refuse(*chosen.refused)
		return y, false
	}
	if len(w.answer.Needs) > before {
		return y, false
	}
	y.inputs = inputs{area: area.In(), onHead: w.circuit.OnHead.In(b), division: w.gauge.Division.In(b)}
	y.Circuit = window.Circuit{Area: area.V, OnHead: w.circuit.OnHead.V, Division: w.gauge.Division.V}
	if y.by != nil && b.Keeps() {
		y.fit = workCurve(b, "certificate.", y.by.Certificate, y.by.Calibrated)
	}
	return y, y.by.jacks() || w.efficiencies(&y)
}

// efficiencies takes the two efficiencies; ok is false where they are the wrong
// way round.
func (w *judge) efficiencies(y *way) (ok bool) {
	b := w.book
	y.low, y.high = w.circuit.Low.In(b), orFigure(b, w.circuit.High, "rig.efficiency.limit")
	y.Low, y.High = w.circuit.Low.V, quantity.Ratio(y.high.V)
	w.answer.Low = stated(w.circuit.Low)
	w.answer.High = &Number{V: y.high.V, Unit: quantity.Must(""), Decimals: 2, Ref: y.high.Ref}
	if w.circuit.High.Known() {
		w.answer.High = stated(w.circuit.High)
	}
	if y.Low > y.High {
		w.answer.Reasons = append(w.answer.Reasons, Note{"reason.efficiency", []string{w.answer.Low.Text(w.Sign()), w.answer.High.Text(w.Sign())}})
		w.need("field.rigs.circuits.efficiency.low")
		return false
	}
	w.answer.Single = w.circuit.High.Known() && w.circuit.Low.V == w.circuit.High.V
	return true
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

// allLimits are the limits themselves, without readings.
func (w *judge) allLimits() []Limit {
	ofPile := w.pileLimit()
	return []Limit{w.circuitLimit(), ofPile, w.reactionLimit(), w.gaugeLimit(), w.freeLimit(ofPile), w.gripLimit()}
}

// limits works out the four required limits, and those that count where they
// are entered.
func (w *judge) limits(y way, ready bool, set working.Of[quantity.Pressure]) []window.Limit {
	b, hasSet := w.book, w.answer.Set != nil
	list := w.allLimits()
	judged := make([]window.Limit, len(list))
	w.plain = make([]quantity.Pressure, len(list))
	for i := range list {
		l := &list[i]
		if l.State == window.Entered && ready {
			name := "limit." + string(l.Kind)
			value := working.In{V: l.Value.V, Ref: l.Value.Ref}
			if l.Value.Unit.Dim == quantity.Pressures {
				limit := quantity.Pressure(l.Value.V)
				judged[i].Exact = limit
				reading := working.Put(b, window.PressureReadingRule, name+".reading", y.PressureReading(limit), value, y.division)
				w.plain[i], judged[i].Reading, l.Reading = reading.V, reading.V, w.pressure(reading, "down")
				if hasSet {
					l.Use = share(working.Put(b, window.PressureUseRule, name+".use", quantity.Ratio(float64(set.V)/float64(limit)), set.In(), value))
				}
			} else {
				w.loadLimit(y, l, &judged[i], &w.plain[i], name, value)
				if hasSet {
					l.Use = share(w.useOf(y, name+".use", set.In(), w.answer.Most, value))
				}
			}
		}
		judged[i].Kind, judged[i].State = l.Kind, l.State
	}
	w.answer.Limits = list
	return judged
}

// loadLimit is the reading of a limit that is a load, without the guard and as
// the guard has it. Below the range of a certificate there is none: the limit is
// then as good as missing, and says why.
func (w *judge) loadLimit(y way, l *Limit, judged *window.Limit, plain *quantity.Pressure, name string, value working.In) {
	exact, reading, atEnd, err := w.limitReading(y, name+".reading", value)
	if err != nil {
		l.State, l.Problem = window.Missing, w.fault(err)
		return
	}
	if atEnd {
		l.Notes = append(l.Notes, Note{"note.certificateEnds", []string{y.by.Number, w.pressure(reading, "").Text(w.Sign())}})
	}
	*plain, judged.Exact = reading.V, exact
	guarded := w.guardLimit(y, value, name, reading)
	judged.Reading, l.Reading = guarded.V, w.pressure(guarded, "down")
	if n := l.Pitching; n != nil {
		at := working.In{V: n.V, Ref: n.Ref}
		if _, pitching, _, err := w.limitReading(y, "pitching.reading", at); err == nil {
			l.PitchingReading = w.pressure(w.guardLimit(y, at, "pitching", pitching), "down")
		}
	}
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
