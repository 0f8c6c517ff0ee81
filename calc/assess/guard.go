package assess

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// guardOn says whether the job wants readings kept away from set load and
// limits, and enough is known about the doubt for it.
func (w *judge) guardOn(y way) bool {
	return w.Guard() == "yes" && len(w.doubting(y).needs) == 0
}

// guardSet moves the set reading up where the guard is on; ok is false while
// something for the guard is not entered, or no reading is certain.
func (w *judge) guardSet(y way, set working.Of[quantity.Pressure], setLoad working.In) (of working.Of[quantity.Pressure], ok bool) {
	w.plainSet = set.V
	if w.Guard() != "yes" {
		return set, true
	}
	d := w.doubting(y)
	if len(d.needs) > 0 {
		return set, false
	}
	w.answer.Guarded = true
	g := y.gauging(d.mid)
	r, err := g.GuardedSet(quantity.Force(setLoad.V), max(0, set.V), y.Division, d.Terms, level())
	if err != nil {
		w.guardFault = w.fault(err)
		return set, false
	}
	b := w.book
	if of = set; r.N > 0 {
		of = working.Put(b, window.GuardedSetRule, "guard.set", r.P, set.In(), working.In{V: float64(r.N), Ref: "search:"}, y.division)
	}
	w.guardProof(y, "guard.set.reaches", rig.Reaches, of.Ref, of.In(), setLoad)
	if r.N > 0 && b.Keeps() {
		w.guardProof(y, "guard.set.fails", rig.Fails, of.Ref, working.Put(b, window.LessRule, "guard.set.below", r.P-y.Division, of.In(), y.division).In(), setLoad)
	}
	return of, true
}

// guardProof states how the load at a reading with its uncertainty stands to a
// bound.
func (w *judge) guardProof(y way, name string, proof rig.GuardProof, of string, p, bound working.In) {
	if !w.book.Keeps() {
		return
	}
	load, _ := w.loadAt(y, name+".load", p, w.doubt.mid)
	if u, err := w.budgetAt(y, name+".u", p, true); err == nil {
		proof.Prove(w.book, name, of, load.In(), u.u.In(), bound)
	}
}

// guardLimit moves the reading of a load limit down where the guard is on. A
// limit that not even the reading 0 keeps for certain has the reading 0.
func (w *judge) guardLimit(y way, limit working.In, name string, reading working.Of[quantity.Pressure]) working.Of[quantity.Pressure] {
	if !w.guardOn(y) || reading.V <= 0 {
		return reading
	}
	b := w.book
	r, err := y.gauging(w.doubt.mid).GuardedLimit(quantity.Force(limit.V), reading.V, y.Division, w.doubt.Terms, level())
	if err != nil {
		// The last reading inside a certificate may still be too high to be certain.
		n := int(quantity.Divisions(float64(reading.V), float64(y.Division), false))
		r = rig.GuardedReading{N: n, P: reading.V - quantity.Pressure(float64(n)*float64(y.Division))}
	}
	of := reading
	if r.N > 0 {
		of = working.Put(b, window.GuardedLimitRule, name+".guarded", r.P, reading.In(), working.In{V: float64(r.N), Ref: "search:"}, y.division)
	}
	if err != nil {
		return of
	}
	w.guardProof(y, name+".keeps", rig.Keeps, of.Ref, of.In(), limit)
	if r.N > 0 && b.Keeps() {
		more := working.Put(b, window.MoreRule, name+".more", r.P+y.Division, of.In(), y.division)
		w.guardProof(y, name+".passes", rig.Passes, of.Ref, more.In(), limit)
	}
	return of
}

// guardRefused says why there is no guarded reading.
func (w *judge) guardRefused() {
	a := w.answer
	a.State = Refused
	if d := w.doubt; len(d.needs) > 0 {
		a.State = Incomplete
		a.Needs = append(a.Needs, d.needs...)
		return
	}
	a.Reasons = append(a.Reasons, Note{Code: "reason.noGuardedReading"})
	if w.guardFault != nil && w.guardFault.Code != "certificate.noReading" {
		a.Reasons = append(a.Reasons, *w.guardFault)
	}
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
