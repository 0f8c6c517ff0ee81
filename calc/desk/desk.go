// Package desk is the core's only door: a shell hands over one request, a JSON
// text with a verb and maybe bytes, and gets one answer. The verbs are
//
//	open   make a new document or read one from bytes
//	enter  change a document; the only verb that does
//	show   look at a document; see the show functions for the views
//	save   the document as the bytes of a job file
//	close  drop a document
//
// A request brings its own ids and times: there is no clock and no randomness
// here, so the same requests in the same order give the same documents, and a
// host can replay its journal. It may also bring the day on which it is asked,
// "day", by which certificates hold; it changes what is shown, never a document.
// A panic never crosses the desk.
package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

// Desk holds the open documents by name. It belongs to one goroutine.
type Desk struct {
	files map[string]*file
	day   string // of the latest request that brought one
}

// New returns a desk without documents.
func New() *Desk { return &Desk{files: map[string]*file{}} }

// Call answers one request. out is the file of the verb save. An answer with
// "fault": true means that this instance must not be used any more.
func (d *Desk) Call(request string, data []byte) (answer string, out []byte) {
	defer func() {
		if recover() != nil {
			n := refusal("desk.fault")
			n.Set("fault", document.NewBool(true))
			answer, out = n.Compact(), nil
		}
	}()
	node, complaints := document.ReadText(request)
	if !complaints.None() || node.Kind() != document.Map {
		return refusal("desk.request").Compact(), nil
	}
	n, out := d.answer(node, data)
	return n.Compact(), out
}

func (d *Desk) answer(r *document.Node, data []byte) (*document.Node, []byte) {
	verb, name := r.Get("verb").Text(), r.Get("doc").Text()
	if day := r.Get("day").Text(); day != "" {
		d.day = day
	}
	switch verb {
	case "open":
		return d.open(r, name, data), nil
	case "enter", "show", "save", "close":
	default:
		return refusal("desk.verb", verb), nil
	}
	f := d.files[name]
	if f == nil {
		return refusal("desk.document", name), nil
	}
	f.on(d.day)
	switch verb {
	case "enter":
		return f.enter(r, data), nil
	case "show":
		return f.show(r, data)
	case "save":
		return okay().with("name", text(f.fileName())).with("title", text(f.job().Title())).Node, f.root.Stable()
	}
	delete(d.files, name)
	return okay().Node, nil
}

// object builds an answer.
type object struct{ *document.Node }

func newObject() object { return object{document.NewMap()} }

func okay() object { return newObject().with("ok", yes(true)) }

func (o object) with(name string, value *document.Node) object {
	o.Set(name, value)
	return o
}

func text(s string) *document.Node { return document.NewText(s) }
func yes(b bool) *document.Node    { return document.NewBool(b) }
func whole(n int) *document.Node   { return document.NewInt(n) }

func texts(list []string) *document.Node {
	n := document.NewList()
	for _, s := range list {
		n.Append(text(s))
	}
	return n
}

// refusal is the answer "no", with the sentence of a code.
func refusal(code string, args ...string) *document.Node {
	return newObject().with("ok", yes(false)).with("code", text(code)).with("says", text(words.Say(code, args...))).Node
}
