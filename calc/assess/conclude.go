package assess

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// conclude names the state of the window, why it is so, and what would open
// a closed one.
func (w *judge) conclude(judged []window.Limit, v window.Verdict, exactSet quantity.Pressure) {
	a, sign := w.answer, w.Sign()
	switch {
	case a.Set == nil:
		a.State = Incomplete
	case a.Set.V <= 0:
		a.State = Refused
		a.Reasons = append(a.Reasons, Note{"reason.headAlone", []string{w.force(w.circuit.OnHead.Of(w.book)).Text(sign), a.SetLoad.Text(sign)}})
	case len(v.Missing) > 0:
		a.State = LimitMissing
		for _, k := range v.Missing {
			a.Reasons = append(a.Reasons, Note{"reason.limitMissing." + string(k), nil})
		}
	case a.Governs < 0:
		a.State = LimitMissing
		a.Reasons = append(a.Reasons, Note{"reason.allWaived", nil})
	case v.Open:
		a.State = Open
	default:
		a.State = Closed
		w.closed(judged, v)
	}
	w.besideGuard(judged)
	w.advise()
	w.gaugeWarnings(exactSet)
	w.reliefValve()
}

// closed names every limit that closes the window. Where a single limit does,
// it says what would open it: every other limit has then been checked, for
// they all allow the set reading. It never offers a smaller factor, a weaker
// preset or a higher efficiency.
func (w *judge) closed(judged []window.Limit, v window.Verdict) {
	a, sign := w.answer, w.Sign()
	var closing []int
	for i, l := range judged {
		if l.State == window.Entered && quantity.Pressure(a.Set.V) > l.Reading {
			closing = append(closing, i)
			a.Reasons = append(a.Reasons, Note{"reason.closed." + string(l.Kind), []string{a.Limits[i].Reading.Text(sign), a.Set.Text(sign)}})
		}
	}
	if v.Rounding {
		a.Reasons = append(a.Reasons, Note{"reason.rounding", []string{stated(w.gauge.Division).Text(sign)}})
	}
	if len(closing) != 1 {
		a.Ways = append(a.Ways, Note{"way.several", nil})
		return
	}
	most := a.Most
	switch l := a.Limits[closing[0]]; l.Kind {
	case window.Reaction:
		w.heavier(a.Limits[closing[0]], working.In{V: most.V, Ref: most.Ref})
	case window.Pile, window.FreeLength, window.Grip:
		a.Ways = append(a.Ways, Note{"way." + string(l.Kind), []string{most.Text(sign)}})
	case window.CircuitPressure:
		a.Ways = append(a.Ways, Note{"way.circuit", []string{a.Set.Text(sign)}})
	case window.Gauge:
		a.Ways = append(a.Ways, Note{"way.gauge", []string{a.Set.Text(sign)}})
	}
}

// advise adds what is to be known whatever the state.
func (w *judge) advise() {
	a, sign := w.answer, w.Sign()
	if a.Guarded && a.Uncertainty != nil {
		a.Notes = append(a.Notes, Note{"note.guarded", []string{a.Uncertainty.Text(sign)}})
	}
	if u := a.Certificate; u != nil {
		if u.OtherGauge {
			a.Notes = append(a.Notes, Note{"note.otherGauge", []string{u.Number}})
		}
		a.Notes = append(a.Notes, u.Look...)
	}
	if len(w.unused) > 0 {
		a.Notes = append(a.Notes, Note{"note.certificateUnused", []string{w.unused[len(w.unused)-1]}})
	}
	if a.Low != nil {
		if u := a.Certificate; u != nil {
			a.Notes = append(a.Notes, Note{"note.gaugeOnly", []string{u.Number, a.Low.Text(sign), a.High.Text(sign)}})
		} else if a.Single {
			a.Notes = append(a.Notes, Note{"note.single", []string{a.Low.Text(sign)}})
		} else {
			a.Notes = append(a.Notes, Note{"note.notCalibrated", []string{a.Low.Text(sign), a.High.Text(sign)}})
		}
	}
	for _, l := range a.Limits {
		if l.State == window.Waived {
			a.Notes = append(a.Notes, Note{"note.waived." + string(l.Kind), []string{l.Waiver.By, l.Waiver.Why}})
		}
	}
}

// reliefValve says when the valve would let the never-exceed reading be passed.
func (w *judge) reliefValve() {
	never, valve := w.answer.Never, w.circuit.ReliefValve
	if never != nil && valve.Known() && float64(valve.V) > never.V*(1+1e-9) {
		w.answer.Notes = append(w.answer.Notes, Note{"note.reliefValve", []string{stated(valve).Text(w.Sign()), never.Text(w.Sign())}})
	}
}

// gaugeWarnings says where the set lies on the dial.
func (w *judge) gaugeWarnings(exactSet quantity.Pressure) {
	a := w.answer
	if a.Set == nil || a.Set.V <= 0 || !w.gauge.FullScale.Known() {
		return
	}
	if a.Set.V < basis.Figure("gauge.low")*float64(w.gauge.FullScale.V) {
		low, _ := basis.Find("gauge.low")
		a.Notes = append(a.Notes, Note{"note.lowOnDial", []string{low.Value}})
	}
}
