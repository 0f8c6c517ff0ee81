package desk

import (
	"slices"
	"strconv"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
	"gaugewright/calc/words"
)

func itoa(n int) string { return strconv.Itoa(n) }

// readings writes what every screen about one pile shows first: the state, the
// two readings, the sentences, the limits. The set reading is handed out only
// when the window is open: no screen can show it large otherwise.
func (f *file) readings(o object, a assess.Answer) object {
	o = o.with("state", text(string(a.State))).with("stateSays", text(words.Say("state."+string(a.State))))
	set := a.Set
	if a.State != assess.Open {
		set = nil
	}
	o = o.with("set", f.says(set)).with("never", f.says(a.Never)).with("big", text(f.big(a)))
	o = o.with("reasons", texts(words.Notes(a.Reasons))).with("ways", texts(words.Notes(a.Ways))).with("notes", texts(f.notes(a)))
	o = o.with("setLoad", f.says(a.SetLoad)).with("loadAtSet", f.says(whenOpen(a, a.LoadAtSet))).with("loadSays", text(loadSays(a))).with("efficiency", f.efficiency(a))
	if n := len(f.choices); n > 0 {
		o = o.with("choices", whole(n)).with("choicesSay", text(words.Say("choices.says", itoa(n))))
	}
	guard := "guard.off"
	if a.Guarded {
		guard = "guard.on"
	}
	o = o.with("guardSays", text(words.Say(guard))).with("guard", f.field("/now/guard"))
	o = o.with("bar", f.bar(a)).with("limits", f.limits(a)).with("cautions", texts(cautions()))
	return o.with("doubt", f.doubtLine(a))
}

// notes are those of a pile, with the warnings about its criterion.
func (f *file) notes(a assess.Answer) []string {
	p, _ := f.job().Pile(a.ID)
	return append(words.Notes(a.Notes), f.mixed(p.Criterion)...)
}

// loadSays is what the load at the set reading is: one where the jacks are
// calibrated.
func loadSays(a assess.Answer) string {
	if a.Certificate != nil && a.Certificate.Jacks {
		return words.Say("reading.loadThere")
	}
	return words.Say("reading.loadLeast")
}

func whenOpen(a assess.Answer, n *assess.Number) *assess.Number {
	if a.State != assess.Open {
		return nil
	}
	return n
}

// big is the sentence of the large place while no reading stands there.
func (f *file) big(a assess.Answer) string {
	switch a.State {
	case assess.Open:
		return ""
	case assess.Incomplete:
		return words.Say("big.incomplete", needs(a.Needs))
	case assess.LimitMissing:
		return words.Say("big.limit missing", words.List(words.Notes(a.Reasons)))
	}
	first := ""
	if len(a.Reasons) > 0 {
		first = words.Note(a.Reasons[0])
	}
	return words.Say("big."+string(a.State), first)
}

func (f *file) efficiency(a assess.Answer) *document.Node {
	if a.Low == nil {
		return document.NewNull()
	}
	if u := a.Certificate; u != nil {
		low, high := f.textOf(a.Low), f.textOf(a.High)
		return newObject().with("head", text(words.Say("efficiency.jacks"))).with("says", text(words.Say("efficiency.two", low, high))).
			with("note", text(words.Say("note.gaugeOnly", named(u.Number), low, high))).with("kind", text("gauge calibrated")).Node
	}
	// The head is short, so that it can stand as large as the reading itself.
	o := newObject().with("head", text(words.Say("efficiency.head")))
	if a.Single {
		return o.with("says", text(words.Say("efficiency.single", f.textOf(a.Low)))).with("note", text(words.Say("note.single", f.textOf(a.Low)))).
			with("kind", text("single")).Node
	}
	low, high := f.textOf(a.Low), f.textOf(a.High)
	return o.with("says", text(words.Say("efficiency.two", low, high))).with("note", text(words.Say("note.notCalibrated", low, high))).
		with("kind", text("not calibrated")).Node
}

// bar gives where the two readings stand on the dial, as fractions of full
// scale: for drawing only.
func (f *file) bar(a assess.Answer) *document.Node {
	p, _ := f.job().Pile(a.ID)
	r, _ := f.job().Rig(p.Rig)
	if a.Never == nil || r.ID == "" {
		return document.NewNull()
	}
	c, _ := r.Circuit(p.Circuit)
	g, ok := f.job().Gauge(c.Gauge)
	if !ok || !g.FullScale.Known() {
		return document.NewNull()
	}
	fraction := func(n *assess.Number) *document.Node {
		if n == nil {
			return document.NewNull()
		}
		at := max(0, min(1, n.V/float64(g.FullScale.V)))
		return document.NewNumber(strconv.FormatFloat(at, 'f', 4, 64))
	}
	full := &assess.Number{V: float64(g.FullScale.V), Unit: g.FullScale.Stated.Unit, Decimals: g.FullScale.Stated.Decimals(), Ref: g.FullScale.Path()}
	return newObject().with("set", fraction(whenOpen(a, a.Set))).with("never", fraction(a.Never)).with("full", f.says(full)).Node
}

func cautions() []string {
	var list []string
	for _, code := range []string{"caution.proof", "caution.never", "caution.loss", "caution.clear", "caution.short", "caution.codes"} {
		list = append(list, words.Say(code))
	}
	return list
}

func (f *file) limits(a assess.Answer) *document.Node {
	list := document.NewList()
	for i, l := range a.Limits {
		state := limitStates[l.State]
		o := newObject().with("kind", text(string(l.Kind))).with("label", text(words.Say("limit."+string(l.Kind)))).
			with("state", text(state)).with("stateSays", text(words.Say("limitState."+state))).
			with("value", f.says(l.Value)).with("reading", f.says(l.Reading)).with("use", f.says(l.Use)).
			with("governs", yes(i == a.Governs))
		says := l.Basis
		switch {
		case l.Problem != nil:
			says = words.Note(*l.Problem)
		case l.State == window.Missing:
			says = words.Say("limit.missingSays", needs(l.Needs))
		case l.State == window.Unchecked:
			says = words.Say("limit.uncheckedSays", needs(l.Needs))
		case l.State == window.Waived:
			says = words.Say("limit.waivedSays", l.Waiver.By, l.Waiver.On, l.Waiver.Why)
		}
		parts := document.NewList()
		for _, p := range l.Parts {
			parts.Append(newObject().with("label", text(words.Say(p.Key))).with("value", f.says(p.Value)).with("least", yes(p.Least)).Node)
		}
		also := document.NewList()
		if l.Pitching != nil {
			also.Append(newObject().with("label", text(words.Say("limit.pitching"))).with("value", f.says(l.Pitching)).with("reading", f.says(l.PitchingReading)).Node)
		}
		list.Append(o.with("says", text(says)).with("parts", parts).with("also", also).with("notes", texts(words.Notes(l.Notes))).
			with("required", yes(required(l.Kind))).with("fields", f.limitForms(a.ID, l.Kind)).Node)
	}
	return list
}

var limitStates = [...]string{window.Missing: "missing", window.Entered: "entered", window.Waived: "waived", window.Unchecked: "unchecked"}

func required(k window.Kind) bool { return slices.Contains(window.Kinds, k) }

// limitForms lists the forms in which a limit is entered, with what each is
// called.
func (f *file) limitForms(pile string, k window.Kind) *document.Node {
	list := document.NewList()
	for _, path := range f.limitPaths(pile, k) {
		names, _ := document.Split(path)
		word := map[string]string{"pileTypes": "type", "piles": "pile", "gauges": "gauge", "rigs": "rig"}[names[1]]
		if len(names) > 3 {
			word = "circuit"
		}
		list.Append(newObject().with("path", text(path)).with("label", text(words.Say("limit.open."+word))).Node)
	}
	return list
}

func (f *file) limitPaths(pile string, k window.Kind) []string {
	p, _ := f.job().Pile(pile)
	r, hasRig := f.job().Rig(p.Rig)
	var c job.Circuit
	hasCircuit := false
	if hasRig {
		c, hasCircuit = r.Circuit(p.Circuit)
	}
	switch {
	case k == window.Pile && p.Type != "":
		return []string{"/now/pileTypes/" + p.Type}
	case k == window.Reaction && hasRig:
		if hasCircuit {
			return []string{r.Path, c.Path}
		}
		return []string{r.Path}
	case k == window.CircuitPressure && hasCircuit:
		return []string{c.Path}
	case k == window.Gauge && hasCircuit && c.Gauge != "":
		return []string{"/now/gauges/" + c.Gauge}
	case k == window.FreeLength && hasCircuit && p.Type != "":
		return []string{"/now/pileTypes/" + p.Type, r.Path, c.Path, p.Path}
	case k == window.Grip && hasRig:
		return []string{r.Path}
	}
	return nil
}

func (f *file) showSizing(r *document.Node) *document.Node {
	j := f.job()
	pile := r.Get("pile").Text()
	if list := j.Piles(); pile == "" && len(list) > 0 {
		pile = list[0]
	}
	a, ok := f.answer(pile)
	if !ok {
		return refusal("desk.missing", pile)
	}
	p, _ := j.Pile(pile)
	o := okay().with("title", text(j.Title())).with("named", yes(j.Title() != ""))
	o = f.readings(o, a)
	factor := "/now/criteria/" + p.Criterion + "/factor"
	rows := document.NewList(append(f.schemeRows(p),
		newObject().with("id", text("rig")).with("label", text(words.Say("row.rig"))).with("says", text(f.rigSays(p))).Node,
		newObject().with("id", text("pile")).with("label", text(words.Say("row.pile"))).with("says", text(f.typeSays(p))).Node,
		newObject().with("id", text("limits")).with("label", text(words.Say("row.limits"))).with("says", text(limitsSay(a))).
			with("bad", yes(a.State == assess.Closed || a.State == assess.LimitMissing)).Node,
	)...)
	blank := !p.WorkingLoad.Known() && p.Rig == "" && p.Type == "" && f.root.At(factor).Text() == "" && f.root.Get("unread") == nil
	o = o.with("rows", rows).with("blank", yes(blank)).with("last", text(f.summary(p))).with("holdSays", text(f.hold(p)))
	if r.Get("tries").Bool() {
		tries := document.NewList(f.field(p.Path+"/rig"), f.field(p.Path+"/circuit"))
		if p.Rig != "" {
			tries.Append(f.field("/now/rigs/" + document.Escape(p.Rig) + "/ballast"))
		}
		tries.Append(f.field(p.Path + "/type"))
		o = o.with("tries", tries)
	}
	return o.with("pile", text(pile)).with("criterion", text(p.Criterion)).with("type", text(p.Type)).
		with("rig", newObject().with("id", text(p.Rig)).with("circuit", text(p.Circuit)).Node).Node
}

func (f *file) hold(p job.Pile) string {
	c, ok := f.job().Criterion(p.Criterion)
	if !ok || !c.HoldTime.Known() {
		return ""
	}
	return words.Say("hold.says", localised(c.HoldTime.Stated, f.job().Sign()))
}

func localised(s quantity.Stated, sign quantity.DecimalSign) string {
	digits := quantity.Localise(s.Digits, sign)
	if s.Unit.Symbol == "" {
		return digits
	}
	return digits + " " + s.Unit.Symbol
}

func limitsSay(a assess.Answer) string {
	entered, waived := 0, 0
	for _, l := range a.Limits {
		if !required(l.Kind) {
			continue
		}
		switch l.State {
		case window.Entered:
			entered++
		case window.Waived:
			waived++
		}
	}
	if waived > 0 {
		return words.Say("limits.waived", itoa(entered), itoa(waived))
	}
	return words.Say("limits.says", itoa(entered))
}

// rigSays names rig and circuit, blank where none is taken.
func (f *file) rigSays(p job.Pile) string {
	r := f.root.Get("now").Get("rigs").Get(p.Rig)
	if r == nil {
		return ""
	}
	c := r.Get("circuits").Get(p.Circuit)
	if c == nil {
		return named(r.Get("name").Text())
	}
	return named(r.Get("name").Text()) + ", " + named(c.Get("name").Text())
}

func (f *file) typeSays(p job.Pile) string {
	t := f.root.Get("now").Get("pileTypes").Get(p.Type)
	if t == nil {
		return ""
	}
	return named(t.Get("name").Text())
}

func named(name string) string {
	if name == "" {
		return words.Say("thing.unnamed")
	}
	return name
}

// summary is the sizing in one line, for the offer to take it up again.
func (f *file) summary(p job.Pile) string {
	sign := f.job().Sign()
	var parts []string
	if p.WorkingLoad.Known() {
		load := localised(p.WorkingLoad.Stated, sign)
		if c, ok := f.job().Criterion(p.Criterion); ok && c.Factor.Known() && (c.Scheme == "" || c.Scheme == "single factor") {
			load += " x " + localised(c.Factor.Stated, sign)
		}
		parts = append(parts, load)
	}
	for _, s := range []string{f.rigSays(p), f.typeSays(p)} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, ", ")
}
