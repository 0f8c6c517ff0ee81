package desk

import (
	"strconv"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// given shows a stated value digit for digit; nil where it is not known.
func (f *file) given(path string, known bool, v float64, s quantity.Stated) *assess.Number {
	if !known {
		return nil
	}
	return &assess.Number{V: v, Unit: s.Unit, Decimals: s.Decimals(), Ref: path}
}

// showWorking opens the number whose place is "step": a step of the working of
// a pile, a stated value, or a borrowed figure.
func (f *file) showWorking(r *document.Node) *document.Node {
	ref := r.Get("step").Text()
	switch {
	case strings.HasPrefix(ref, "basis:"):
		return f.showFigure(strings.TrimPrefix(ref, "basis:"))
	case strings.HasPrefix(ref, "/"):
		return f.showStated(ref)
	case ref == "search:":
		return okay().with("title", text(words.Say("leaf.search"))).Node
	case strings.HasPrefix(ref, assess.Typed):
		return okay().with("title", text(words.Say("leaf.typed"))).with("result", text(f.localText(strings.TrimPrefix(ref, assess.Typed)))).Node
	}
	if make := f.madeFor(ref); make != nil {
		book := working.NewBook("")
		make(book)
		return f.stepIn(book, ref, assess.Answer{})
	}
	if step, ok := f.conversionStep(ref); ok {
		return step
	}
	pile, _, _ := strings.Cut(ref, "/")
	book := working.NewBook("")
	a, _ := f.judge().Whole(pile, book)
	if book.Find(ref) == nil { // what only the list of doubts works out
		f.judge().Doubts(pile, book)
	}
	return f.stepIn(book, ref, a)
}

// madeFor is what makes the step of a number that belongs to no pile: of the
// order list, the lengths, a certificate or a gauge by itself. They are made with
// their working only when one of them is opened.
func (f *file) madeFor(ref string) func(*working.Book) {
	begins, rest, _ := strings.Cut(ref, "/")
	id, _, _ := strings.Cut(rest, "/")
	return map[string]func(*working.Book){
		orderSteps:              func(b *working.Book) { f.judge().Order(b) },
		lengthSteps:             func(b *working.Book) { f.judge().Lengths(b) },
		assess.CertificateSteps: func(b *working.Book) { f.judge().CertificateSheet(id, b) },
		assess.GaugeSteps:       func(b *working.Book) { f.judge().GaugeSheet(id, b) },
	}[begins+"/"]
}

// stepIn shows a step that stands in a book.
func (f *file) stepIn(book *working.Book, ref string, a assess.Answer) *document.Node {
	step := book.Find(ref)
	if step == nil {
		return refusal("desk.missing", ref)
	}
	return f.step(step, a, book)
}

func (f *file) step(step *working.Step, a assess.Answer, book *working.Book) *document.Node {
	sign := f.job().Sign()
	printed := step.Print(sign)
	result := printed.Result
	if printed.Unit != "" {
		result += " " + printed.Unit
	}
	shown := ""
	for _, n := range a.Numbers() {
		if n.Ref == step.ID {
			if same := f.textOf(n); same != result {
				shown = same
			}
			break
		}
	}
	o := okay().with("title", text(words.Say("rule."+step.Rule.Key))).with("symbol", text(step.Rule.Symbol)).
		with("formula", text(step.Rule.Symbol+" = "+printed.Formula)).with("values", text(printed.Values)).
		with("result", text(result)).with("shown", text(shown))
	if entry, ok := basis.Find(step.Rule.Basis); ok {
		o = o.with("source", source(entry))
	} else {
		o = o.with("source", document.NewNull())
	}
	inputs := document.NewList()
	for i, in := range step.Inputs {
		symbol := step.Rule.Inputs[i]
		says := printed.Inputs[i]
		if unit := symbol.Dim.Coherent(); unit != "" {
			says += " " + unit
		}
		name := words.Say("symbol." + symbol.Key)
		if e, ok := basis.Find(strings.TrimPrefix(in.Ref, "basis:")); ok {
			name = words.Say("source.named", name, markSays(e))
		}
		inputs.Append(newObject().with("symbol", text(symbol.Name)).with("name", text(name)).
			with("says", text(says)).with("open", text(in.Ref)).with("kind", text(kindOf(in.Ref))).Node)
	}
	proofs := document.NewList()
	for _, id := range step.Proofs {
		proof := book.Find(id)
		difference, err := proof.Check()
		proofs.Append(newObject().with("title", text(words.Say("rule."+proof.Rule.Key))).with("formula", text(proof.Rule.Formula)).
			with("says", text(proof.Print(sign).Values)).with("holds", yes(err == nil && difference == 0)).Node)
	}
	return o.with("inputs", inputs).with("proofs", proofs).Node
}

func kindOf(ref string) string {
	switch {
	case strings.HasPrefix(ref, "basis:"):
		return "figure"
	case strings.HasPrefix(ref, "/"):
		return "stated"
	case ref == "search:":
		return "search"
	case strings.HasPrefix(ref, assess.Typed):
		return "typed"
	}
	return "step"
}

// localText writes the text of a quantity with the job's decimal sign.
func (f *file) localText(stated string) string {
	digits, unit, _ := strings.Cut(stated, " ")
	return strings.TrimSpace(quantity.Localise(digits, f.job().Sign()) + " " + unit)
}

func source(e basis.Entry) *document.Node {
	return newObject().with("document", text(e.Document)).with("edition", text(e.Edition)).with("clause", text(e.Clause)).
		with("mark", text(words.Say("mark."+string(rune(e.Mark))))).with("markLetter", text(string(rune(e.Mark)))).Node
}

func (f *file) showFigure(id string) *document.Node {
	e, ok := basis.Find(id)
	if !ok {
		return refusal("desk.missing", id)
	}
	return okay().with("title", text(words.Say("leaf.figure"))).with("result", text(quantity.Localise(e.Value, f.job().Sign()))).
		with("source", source(e)).Node
}

// showStated shows a value as it was stated, by whom and when, and what it is
// in the coherent unit.
func (f *file) showStated(path string) *document.Node {
	n := f.root.At(path)
	raw := n.Text()
	whole, list := strings.CutSuffix(path, "/"+lastName(path))
	if field, ok := job.FieldAt(whole); ok && list && field.Kind == job.Lines {
		return f.showPoint(whole, path)
	}
	title, typed, conversion, key := words.Say("leaf.stated"), raw, "", ""
	if field, ok := job.FieldAt(path); ok {
		title, key = words.Say(field.Key()), strings.TrimPrefix(field.Key(), "field.")
		if s, err := quantity.ParseStated(raw, field.Dim); err == nil && field.Kind == job.Quantity {
			typed, conversion = localised(s, f.job().Sign()), f.conversion(s)
		}
	} else if strings.HasPrefix(path, "/records/") {
		title = words.Say("leaf.record")
	}
	if raw == "" {
		typed = words.Say("leaf.blank")
	}
	if f.contested(path) {
		conversion = words.Say("leaf.contested")
	}
	stated := newObject().with("typed", text(typed)).with("conversion", text(conversion))
	if f.tried[path] {
		return okay().with("title", text(title)).with("result", text(typed)).with("stated", stated.with("by", text(words.Say("leaf.tried"))).Node).Node
	}
	stated = stated.with("path", text(path))
	if reason, asked := f.reasonOf(key, path); asked {
		if reason == "" {
			reason = words.Say("reason.none")
		}
		stated = stated.with("basis", text(reason))
	}
	if below, ok := strings.CutPrefix(path, "/now"); ok {
		if o, ok := history.LastOf(f.root, below); ok {
			stated = stated.with("by", text(named(o.Who))).with("at", text(o.At)).with("device", text(o.Device))
		}
	}
	return okay().with("title", text(title)).with("result", text(typed)).with("stated", stated.Node).with("source", f.besideSource(key, path)).Node
}

// showPoint shows a point of a certificate as it was stated, with its units.
func (f *file) showPoint(list, path string) *document.Node {
	field, _ := job.FieldAt(list)
	at := document.NewMap()
	columns := strings.Fields(f.root.At(strings.TrimSuffix(list, "/"+lastName(list)) + "/columns").Text())
	var parts []string
	for i, digits := range strings.Fields(f.root.At(path).Text()) {
		says := quantity.Localise(digits, f.job().Sign())
		if i < len(columns) {
			says += " " + columns[i]
		}
		parts = append(parts, says)
	}
	says := strings.Join(parts, words.Say("point.and"))
	stated := object{at}.with("typed", text(says)).with("conversion", text("")).with("path", text(list))
	if o, ok := history.LastOf(f.root, strings.TrimPrefix(list, "/now")); ok {
		stated = stated.with("by", text(o.Who)).with("at", text(o.At)).with("device", text(o.Device))
	}
	return okay().with("title", text(words.Say("point.title", words.Say(field.Key()), pointNumber(path)))).with("result", text(says)).with("stated", stated.Node).Node
}

// pointNumber counts a point from one.
func pointNumber(path string) string {
	n, err := strconv.Atoi(lastName(path))
	if err != nil {
		return ""
	}
	return itoa(n + 1)
}

func lastName(path string) string { return path[strings.LastIndexByte(path, '/')+1:] }

// conversion writes a stated value in the coherent unit: "15.0 MPa x 1000 =
// 15000 kPa"; blank where the unit is the coherent one.
func (f *file) conversion(s quantity.Stated) string {
	unit := s.Unit.Dim.Coherent()
	if s.Unit.Symbol == unit {
		return ""
	}
	num, den := s.Unit.Factor()
	factor := quantity.Digits(num)
	if den != 1 {
		factor += " / " + quantity.Digits(den)
	}
	sign := f.job().Sign()
	right := quantity.Localise(quantity.Digits(s.Value), sign)
	if unit != "" {
		right += " " + unit
	}
	return words.Say("leaf.conversion", quantity.Localise(s.Digits, sign)+" x "+factor, right)
}
