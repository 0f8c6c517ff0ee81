package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// problem says why a typed text is not taken.
type problem struct {
	code, found, allowed, example string
	offers                        []offer
}

// typed enters the text of a box. A text that cannot be read is kept under
// "unread" in the file, and the field counts as blank until it can: an old
// value must not stand behind a new text.
func (f *file) typed(r *document.Node, path, typed string) *document.Node {
	field, ok := job.FieldAt(path)
	if !ok || !f.owned(path) {
		return refusal("desk.path", path)
	}
	if field.Kind == job.Lines {
		return f.typedPoints(r, path, typed)
	}
	value, p := f.read(field, path, typed)
	if p != nil {
		answer := f.put(r, path, "", true)
		f.remember(path, typed)
		if answer.Get("ok").Bool() {
			answer.Set("problem", problemNode(p))
		}
		return answer
	}
	f.forget(path)
	return f.put(r, path, value, true)
}

// read turns a typed text into what the file holds.
func (f *file) read(field job.Field, path, typed string) (value string, p *problem) {
	clean := strings.TrimSpace(typed)
	switch field.Kind {
	case job.Lines:
		_, _, p := f.readPoints(path, typed)
		return "", p
	case job.Columns:
		value = strings.Join(pointWords(strings.ReplaceAll(clean, ",", " ")), " ")
		if value != "" && !columnsOf(value) {
			return "", &problem{code: "typed.columns", found: "MPa kN"}
		}
	case job.Words:
		if len(clean) > mostWords {
			return "", &problem{code: "typed.range", found: clean[:40], allowed: "500"}
		}
		return clean, nil
	case job.Quantity:
		for _, other := range field.Other {
			if strings.EqualFold(clean, words.Say("choice."+other)) || clean == other {
				return other, nil
			}
		}
		s, ok, err := quantity.ReadTyped(typed, field.Dim, f.unitOf(field, path), f.job().Sign())
		if err != nil {
			return "", f.textProblem(err)
		}
		if !ok {
			return "", nil
		}
		value = s.Text()
	default:
		value = clean
	}
	if te := field.Problem(value); te != nil {
		return "", fieldProblem(te, clean)
	}
	if p := f.cross(path, value); p != nil {
		return "", p
	}
	return value, nil
}

// fieldProblem says of a typed text why its field cannot hold it.
func fieldProblem(te *quantity.TextError, typed string) *problem {
	code, known := map[string]string{"job.range": "typed.range", "job.choice": "typed.choice", "job.count": "typed.count", "job.quantity": "typed.number",
		"job.date": "typed.date"}[te.Code]
	if !known {
		code = "typed.form"
	}
	return &problem{code: code, found: typed, allowed: te.Allowed, example: te.Example}
}

const mostWords = 500

// cross looks at what a single field cannot tell: the job with the value in it
// must not be worse than without.
func (f *file) cross(path, value string) *problem {
	patch, ok := f.job().Patch(path, text(value))
	if !ok {
		return nil
	}
	names, _ := document.Split(path)
	if len(names) == 4 && names[1] == "certificates" && names[3] == "columns" {
		return f.pointsFit(strings.TrimSuffix(path, "/columns"), "", value, nil)
	}
	if len(names) < 3 || names[1] != "rigs" {
		return nil
	}
	trial := job.Empty("trial")
	rigs := document.NewMap()
	rigs.Set(names[2], f.root.At("/now/rigs/"+document.Escape(names[2])).Clone())
	trial.Get("now").Set("rigs", rigs)
	document.MergePatch(trial.Get("now"), patch)
	for _, c := range job.Problems(trial).List {
		if c.Code == "job.rod" || c.Code == "job.efficiency" {
			return &problem{code: strings.Replace(c.Code, "job.", "typed.", 1), found: c.Found, allowed: c.Allowed}
		}
	}
	return nil
}

// textProblem writes why a text is no quantity, with its ways out. An offer is
// written with the decimal sign that the job then has, so that it can be typed.
func (f *file) textProblem(err error) *problem {
	te, ok := err.(*quantity.TextError)
	if !ok {
		return &problem{code: "typed.number"}
	}
	p := &problem{code: te.Code, found: te.Found, allowed: te.Allowed, example: te.Example}
	for i, o := range te.Offers {
		comma := f.job().Sign() == quantity.Comma || te.Code == "typed.separator" && i == 0
		if comma {
			o = strings.Replace(o, ".", ",", 1)
		}
		one := offer{label: words.Say("offer.plain", o), typed: o}
		if te.Code == "typed.separator" {
			one.sign = []string{",", "."}[i]
			one.label = words.Say([]string{"offer.decimal", "offer.thousands"}[i], o)
		}
		p.offers = append(p.offers, one)
	}
	return p
}

// unitOf is the unit printed beside a box: that of the value that stands
// there, of the text that could not be read, or the suggested one.
func (f *file) unitOf(field job.Field, path string) quantity.Unit {
	if s, err := quantity.ParseStated(f.root.At(path).Text(), field.Dim); err == nil {
		return s.Unit
	}
	return quantity.Must(field.Unit)
}

// sign answers the question about "1,200" for the whole job and reads again
// what could not be read.
func (f *file) sign(r *document.Node) *document.Node {
	sign := r.Get("sign").Text()
	field, _ := job.FieldAt("/now/decimalSign")
	if te := field.Problem(sign); te != nil {
		return refusal("typed.choice", te.Found, te.Allowed)
	}
	answer := f.put(r, "/now/decimalSign", sign, false)
	var again [][2]string
	for path, raw := range f.root.Get("unread").Members() {
		again = append(again, [2]string{path, raw.Text()})
	}
	for _, one := range again {
		f.typed(r, one[0], one[1])
		if f.question != nil { // it waits to be typed, and asked about, again
			f.question = nil
			f.remember(one[0], one[1])
		}
	}
	return answer
}

// remember keeps a text that could not be read; forget drops it.
func (f *file) remember(path, typed string) {
	unread := f.root.Get("unread")
	if unread.Kind() != document.Map {
		unread = document.NewMap()
		f.root.Set("unread", unread)
	}
	unread.Set(path, text(typed))
	f.unreadChanged()
}

// unreadChanged forgets what was worked out: a rake that cannot be read makes a
// difference.
func (f *file) unreadChanged() {
	clear(f.answers)
	f.orderMade = nil
}

func (f *file) forget(path string) {
	unread := f.root.Get("unread")
	if unread.Get(path) == nil {
		return
	}
	unread.Remove(path)
	if unread.Len() == 0 {
		f.root.Remove("unread")
	}
	f.unreadChanged()
}
