package assess

import (
	"errors"

	"gaugewright/calc/job"
	"gaugewright/calc/pile"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// Part is one of the loads of which the least is the limit of the pile.
type Part struct {
	Key   string // of calc/words: what it is
	Value *Number
	Least bool
}

// The rules a pile type may choose for what it stands, as the job names them.
const (
	ruleMaker    = "maker"
	rulePressing = "while pressing"
	ruleDriving  = "0.8 fck with prestress"
	ruleSteelLow = "0.8 fy"
	ruleSteel    = "0.9 fy"
	ruleTimber   = "0.8 timber"
)

// ruleMaterial is what a rule is for.
var ruleMaterial = map[string]string{rulePressing: "concrete", ruleDriving: "concrete", ruleSteelLow: "steel", ruleSteel: "steel", ruleTimber: "timber"}

// pileLimit is the least of what is entered about the pile: the maker's stated
// load, the section by the rule that was chosen, a weaker segment, the splice
// and the follower.
func (w *judge) pileLimit() Limit {
	l := Limit{Kind: window.Pile}
	t := w.pileType
	switch {
	case !w.hasType:
		l.Needs = []string{"field.piles.type"}
		return l
	case t.LimitWaived:
		l.State, l.Waiver = window.Waived, t.Waiver
		return l
	}
	computed := t.Rule != "" && t.Rule != ruleMaker
	var list []pile.Limit
	var inputs []working.In
	add := func(key string, value working.Of[quantity.Force], n *Number) {
		list = append(list, pile.Limit{Key: key, Load: value.V})
		inputs = append(inputs, value.In())
		l.Parts = append(l.Parts, Part{Key: "symbol.pileLimit." + key, Value: n})
	}
	statedPart := func(key string, g job.Given[quantity.Force]) {
		if g.Known() {
			add(key, g.Of(w.book), stated(g))
		}
	}
	statedPart(pile.LimitMaker, t.PressingLimit)
	switch {
	case computed:
		if key, of, n := w.sectionLimit(&l); n != nil {
			add(key, of, n)
		}
	case !t.PressingLimit.Known():
		l.Needs = append(l.Needs, "field.pileTypes.pressingLimit")
	}
	if len(l.Needs) > 0 || l.Problem != nil {
		l.Parts = nil
		return l
	}
	for _, s := range w.stock {
		if s.Type == "" || s.Type == t.ID {
			statedPart(pile.LimitSegment, s.PressingLimit)
		}
	}
	statedPart(pile.LimitSplice, t.SpliceCapacity)
	if w.pile.Follower == "yes" {
		statedPart(pile.LimitFollower, t.FollowerCapacity)
		if !t.FollowerCapacity.Known() {
			l.Notes = append(l.Notes, Note{Code: "note.followerUnknown"})
		}
	}
	least, err := pile.Weakest(list)
	if err != nil {
		l.Problem, l.Parts = w.problem(err), nil
		return l
	}
	l.State, l.Basis, l.Value = window.Entered, t.LimitBasis, l.Parts[least].Value
	l.Parts[least].Least = true
	if len(list) == 1 {
		l.Parts = nil
		return l
	}
	l.Value = w.force(working.Put(w.book, pile.WeakestRule(list), "limit.pile", list[least].Load, inputs...))
	return l
}

// problem words an error of calc/pile.
func (w *judge) problem(err error) *Note {
	var e *pile.InputError
	if !errors.As(err, &e) {
		return &Note{Code: "pile.notFinite", Args: []string{"", "", ""}}
	}
	return &Note{Code: e.Code, Args: e.Args(w.Sign())}
}

// sectionLimit works out what the section stands by the chosen rule, off the
// axis where the grip is; needs and problem are noted in l.
func (w *judge) sectionLimit(l *Limit) (key string, of working.Of[quantity.Force], n *Number) {
	b := w.book
	s := w.section()
	if len(s.needs) > 0 || s.problem != nil {
		l.Needs = append(l.Needs, s.needs...)
		if s.problem != nil {
			l.Problem = w.problem(s.problem)
		}
		return "", of, nil
	}
	sigma, ok := w.stressLimit(l, s)
	if !ok {
		return "", of, nil
	}
	off := w.rig.Grip.OffAxis
	if !off.Known() || off.V == 0 {
		load, err := pile.SectionLimit(s.area.V, sigma.V)
		if err != nil {
			l.Problem = w.problem(err)
			return "", of, nil
		}
		of = working.Put(b, pile.SectionLimitRule, "limit.section", load, s.area.In(), sigma.In())
		return pile.LimitSection, of, w.force(of)
	}
	if s.modulus == nil {
		l.Needs = append(l.Needs, "field.pileTypes.gyration", "field.pileTypes.width")
		return "", of, nil
	}
	modulus := s.modulus()
	load, err := pile.OffAxisLimit(sigma.V, s.area.V, off.V, modulus.V)
	if err != nil {
		l.Problem = w.problem(err)
		return "", of, nil
	}
	of = working.Put(b, pile.OffAxisRule, "limit.section", load, sigma.In(), s.area.In(), off.In(b), modulus.In())
	return pile.LimitOffAxis, of, w.force(of)
}

// stressLimit is the stress that pressing may add, by the chosen rule.
func (w *judge) stressLimit(l *Limit, s section) (sigma working.Of[quantity.Pressure], ok bool) {
	t, b := w.pileType, w.book
	if ruleMaterial[t.Rule] != s.material {
		l.Problem = &Note{Code: "pile.ruleMaterial", Args: []string{t.Rule, s.material}}
		return sigma, false
	}
	var v quantity.Pressure
	var err error
	var rule working.Rule
	var inputs []working.In
	switch t.Rule {
	case rulePressing, ruleDriving:
		strength, known := w.concreteNow(l)
		if !t.Concrete.Prestress.Known() {
			l.Needs = append(l.Needs, "field.pileTypes.concrete.prestress")
		}
		if !known || len(l.Needs) > 0 {
			return sigma, false
		}
		prestress := t.Concrete.Prestress
		if t.Rule == rulePressing {
			alpha, gamma := figure("concrete.pressing.alpha"), figure("concrete.pressing.gamma")
			v, err = pile.PressingStress(quantity.Ratio(alpha.V), strength.V, quantity.Ratio(gamma.V), prestress.V)
			rule, inputs = pile.PressingStressRule, []working.In{alpha, strength.In(), gamma, prestress.In(b)}
		} else {
			c := figure("concrete.driving.share")
			v, err = pile.DrivingStress(quantity.Ratio(c.V), strength.V, prestress.V)
			rule, inputs = pile.DrivingStressRule, []working.In{c, strength.In(), prestress.In(b)}
		}
	case ruleSteelLow, ruleSteel:
		share := figure(map[string]string{ruleSteelLow: "steel.share.low", ruleSteel: "steel.share.high"}[t.Rule])
		yield, known := w.yield(l, s)
		if !known {
			return sigma, false
		}
		v, err = pile.ShareStress(quantity.Ratio(share.V), quantity.Pressure(yield.V))
		rule, inputs = pile.SteelStressRule, []working.In{share, yield}
	case ruleTimber:
		share := figure("timber.share")
		strength := t.TimberStrength.In(b)
		if !t.TimberStrength.Known() {
			if t.TimberClass == "" {
				l.Needs = append(l.Needs, "field.pileTypes.timber.class")
				return sigma, false
			}
			id, _, classErr := pile.TimberFigures(t.TimberClass)
			if classErr != nil {
				l.Problem = w.problem(classErr)
				return sigma, false
			}
			strength = figure(id)
		}
		v, err = pile.ShareStress(quantity.Ratio(share.V), quantity.Pressure(strength.V))
		rule, inputs = pile.TimberStressRule, []working.In{share, strength}
	}
	if err != nil {
		l.Problem = w.problem(err)
		return sigma, false
	}
	return working.Put(b, rule, "limit.stress", v, inputs...), true
}

// yield is the yield strength as stated, or of the grade by the thickness.
func (w *judge) yield(l *Limit, s section) (working.In, bool) {
	t := w.pileType
	if t.Yield.Known() {
		return t.Yield.In(w.book), true
	}
	if t.SteelGrade == "" {
		l.Needs = append(l.Needs, "field.pileTypes.steel.grade")
		return working.In{}, false
	}
	if s.thick == 0 {
		l.Needs = append(l.Needs, "field.pileTypes.wall")
		return working.In{}, false
	}
	id, err := pile.SteelFigure(t.SteelGrade, s.thick)
	if err != nil {
		l.Problem = w.problem(err)
		return working.In{}, false
	}
	return figure(id), true
}

// concreteNow is the characteristic strength of a cylinder when the pile is
// pressed: a stated test of cube or cylinder, else class and age.
func (w *judge) concreteNow(l *Limit) (of working.Of[quantity.Pressure], ok bool) {
	c, b := w.pileType.Concrete, w.book
	if c.Strength.Known() {
		switch c.Specimen {
		case "cylinder":
			return c.Strength.Of(b), true
		case "cube":
			conversion, err := pile.FromCube(c.Strength.V)
			if err != nil {
				l.Problem = w.problem(err)
				return of, false
			}
			return working.Put(b, conversion.Rule(), "concrete.fromCube", conversion.Cylinder, conversion.Inputs(c.Strength.In(b))...), true
		}
		l.Needs = append(l.Needs, "field.pileTypes.concrete.specimen")
		return of, false
	}
	if c.Class == "" {
		l.Needs = append(l.Needs, "field.pileTypes.concrete.class")
	}
	if !c.HasAge {
		l.Needs = append(l.Needs, "field.pileTypes.concrete.age")
	}
	young := c.HasAge && pile.Days(c.Age) < pile.FullAge
	if young && c.Hardening == "" {
		l.Needs = append(l.Needs, "field.pileTypes.concrete.hardening")
	}
	if len(l.Needs) > 0 {
		return of, false
	}
	class, err := pile.ConcreteClass(c.Class)
	if err != nil {
		l.Problem = w.problem(err)
		return of, false
	}
	fck := figure(class.CylinderFigure())
	if !young {
		return working.Of[quantity.Pressure]{V: class.Cylinder, Ref: fck.Ref}, true
	}
	aged, err := pile.StrengthAt(class.Cylinder, c.Hardening, pile.Days(c.Age))
	if err != nil {
		l.Problem = w.problem(err)
		return of, false
	}
	hardening, _ := pile.HardeningFigure(c.Hardening)
	margin := figure("concrete.meanMargin")
	mean := working.Put(b, pile.MeanStrengthRule, "concrete.mean", aged.Mean, fck, margin)
	share := working.Put(b, pile.AgeShareRule, "concrete.share", aged.Share, figure(hardening), working.In{V: float64(c.Age), Ref: c.AgePath})
	return working.Put(b, pile.AgedStrengthRule, "concrete.aged", aged.Strength, share.In(), mean.In(), margin), true
}

// freeLimit is what the pile stands over the length that nothing holds to its
// sides: grip height, the whole stroke, and soft or pre-bored ground.
func (w *judge) freeLimit(ofPile Limit) Limit {
	l := Limit{Kind: window.FreeLength, State: window.Unchecked}
	t, b := w.pileType, w.book
	if !w.hasType || !w.hasRig || !w.hasCircuit {
		return l
	}
	if waiver, waived := t.FreeWaiver, t.FreeWaived; waived {
		l.State, l.Waiver = window.Waived, waiver
		return l
	}
	if ofPile.State != window.Entered {
		l.Needs = append(l.Needs, "limit.pile")
	}
	if !w.rig.GripHeight.Known() {
		l.Needs = append(l.Needs, "field.rigs.gripHeight")
	}
	if !w.circuit.Stroke.Known() {
		l.Needs = append(l.Needs, "field.rigs.circuits.stroke")
	}
	s := w.section()
	l.Needs = append(l.Needs, s.needs...)
	if len(s.needs) == 0 && s.problem == nil && s.moment == nil {
		l.Needs = append(l.Needs, "field.pileTypes.gyration")
	}
	if s.problem != nil {
		l.Problem = w.problem(s.problem)
	}
	stiffness, known := w.stiffness(&l, s)
	if len(l.Needs) > 0 || l.Problem != nil || !known {
		return l
	}
	unheld, known := w.unheld(&l)
	if !known {
		return l
	}
	free, err := pile.FreeLength(w.rig.GripHeight.V, w.circuit.Stroke.V, unheld.V)
	if err != nil {
		l.Problem = w.problem(err)
		return l
	}
	length := working.Put(b, pile.FreeLengthRule, "free.length", free, w.rig.GripHeight.In(b), w.circuit.Stroke.In(b), unheld.In())
	moment := s.moment()
	n0 := working.In{V: ofPile.Value.V, Ref: ofPile.Value.Ref}
	of := func(state string, k working.In) working.Of[quantity.Force] {
		strut := pile.Strut{Stiffness: quantity.Pressure(stiffness.V), Moment: moment.V, LengthFactor: quantity.Ratio(k.V), Length: free}
		in := strutIn{n0, stiffness, moment.In(), k, length.In()}
		if s.material == "steel" {
			return w.steelFree(&l, state, s, strut, in)
		}
		return w.combinedFree(&l, state, strut, in)
	}
	held := of("free", orFigure(b, t.LengthFactor, "buckling.lengthFactor"))
	if l.Problem != nil || len(l.Needs) > 0 {
		return l
	}
	l.State, l.Value = window.Entered, w.force(held)
	l.Pitching = w.force(of("pitching", orFigure(b, t.PitchingFactor, "buckling.pitchingFactor")))
	return l
}

// strutIn are the values of a strut on their way into steps.
type strutIn struct{ n0, e, i, k, length working.In }

// freeSteps is what the limit over the free length is called: with the toe
// held by the ground it is one of the limits, at pitching it is not.
var freeSteps = map[string]string{"free": "limit.freeLength", "pitching": "pitching.limit"}

// unheld is the depth of soft or pre-bored ground: 0 m where it holds the pile
// from the platform down. Blank is not zero.
func (w *judge) unheld(l *Limit) (z working.Of[quantity.Length], ok bool) {
	soft, bored, b := w.pile.SoftDepth, w.pile.PreBored, w.book
	switch {
	case !soft.Known() && !bored.Known():
		l.Needs = append(l.Needs, "field.piles.softDepth")
		return z, false
	case !bored.Known():
		return soft.Of(b), true
	case !soft.Known():
		return bored.Of(b), true
	}
	depth, err := pile.Unheld(soft.V, bored.V)
	if err != nil {
		l.Problem = w.problem(err)
		return z, false
	}
	return working.Put(b, pile.UnheldRule, "free.unheld", depth, soft.In(b), bored.In(b)), true
}

func (w *judge) combinedFree(l *Limit, state string, strut pile.Strut, in strutIn) (of working.Of[quantity.Force]) {
	buckling, err := strut.Combined(quantity.Force(in.n0.V))
	if err != nil {
		l.Problem = w.problem(err)
		return of
	}
	if buckling.Euler == 0 {
		l.Needs = append(l.Needs, "field.rigs.gripHeight")
		return of
	}
	euler := working.Put(w.book, pile.EulerRule, state+".euler", buckling.Euler, in.e, in.i, in.k, in.length)
	return working.Put(w.book, pile.CombinedRule, freeSteps[state], buckling.Limit, in.n0, euler.In())
}

func (w *judge) steelFree(l *Limit, state string, s section, strut pile.Strut, in strutIn) (of working.Of[quantity.Force]) {
	yield, known := w.yield(l, s)
	if w.pileType.Curve == "" {
		l.Needs = append(l.Needs, "field.pileTypes.buckling.curve")
	}
	if !known || len(l.Needs) > 0 {
		return of
	}
	id, err := pile.CurveFigure(w.pileType.Curve)
	if err != nil {
		l.Problem = w.problem(err)
		return of
	}
	alpha := figure(id)
	buckling, err := strut.Steel(quantity.Force(in.n0.V), s.area.V, quantity.Pressure(yield.V), quantity.Ratio(alpha.V))
	if err != nil {
		l.Problem = w.problem(err)
		return of
	}
	if buckling.Euler == 0 {
		l.Needs = append(l.Needs, "field.rigs.gripHeight")
		return of
	}
	b := w.book
	euler := working.Put(b, pile.EulerRule, state+".euler", buckling.Euler, in.e, in.i, in.k, in.length)
	lambda := working.Put(b, pile.SlendernessRule, state+".slenderness", buckling.Slenderness, s.area.In(), yield, euler.In())
	phi := working.Put(b, pile.PhiRule, state+".phi", buckling.Phi, alpha, lambda.In())
	chi := working.Put(b, pile.ChiRule, state+".chi", buckling.Chi, phi.In(), lambda.In())
	return working.Put(b, pile.SteelFreeRule, freeSteps[state], buckling.Limit, chi.In(), in.n0)
}

// stiffness is the modulus of elasticity: stated, else of the material.
func (w *judge) stiffness(l *Limit, s section) (working.In, bool) {
	t, b := w.pileType, w.book
	if t.Stiffness.Known() {
		return t.Stiffness.In(b), true
	}
	switch s.material {
	case "steel":
		return figure("steel.stiffness"), true
	case "timber":
		if _, id, err := pile.TimberFigures(t.TimberClass); err == nil {
			return figure(id), true
		}
	case "concrete":
		var mute Limit
		if strength, known := w.concreteNow(&mute); known {
			if mean, err := pile.MeanStrength(strength.V); err == nil {
				if e, err := pile.ConcreteStiffness(mean); err == nil {
					of := working.Put(b, pile.MeanStrengthRule, "concrete.meanNow", mean, strength.In(), figure("concrete.meanMargin"))
					return working.Put(b, pile.ConcreteStiffnessRule, "concrete.stiffness", e, figure("concrete.stiffness.base"), of.In(), figure("concrete.stiffness.strength")).In(), true
				}
			}
		}
	}
	l.Needs = append(l.Needs, "field.pileTypes.stiffness")
	return working.In{}, false
}
