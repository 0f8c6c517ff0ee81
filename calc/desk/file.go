package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// file is one open document.
type file struct {
	root     *document.Node
	judged   *assess.Job // of the present tree; nil after a change
	readOnly bool
}

func (f *file) job() job.Job { return job.View(f.root) }

// judge returns the judge of the present tree.
func (f *file) judge() *assess.Job {
	if f.judged == nil {
		f.judged = assess.Of(f.job())
	}
	return f.judged
}

// answer assesses a pile, with the places of its numbers.
func (f *file) answer(pile string) (assess.Answer, bool) {
	return f.judge().Pile(pile, working.NewBook(""))
}

// open makes a new document ("as": "new", with three ids: job, pile,
// criterion; "kind": "shelf" makes one without a pile) or reads one from
// bytes. What cannot be read is not opened, and nothing else changes.
func (d *Desk) open(r *document.Node, name string, data []byte) *document.Node {
	var root *document.Node
	switch {
	case r.Get("as").Text() == "new" && len(data) == 0:
		ids := r.Get("ids")
		if ids.Len() < 3 {
			return refusal("desk.ids")
		}
		if r.Get("kind").Text() == "shelf" || name == "shelf" {
			root = job.Empty(ids.Item(0).Text())
		} else {
			root = job.New(name, ids.Item(1).Text(), ids.Item(2).Text())
		}
	default:
		var complaints document.Complaints
		root, complaints = document.Read(data)
		if complaints.None() {
			complaints = job.Check(root)
		}
		if !complaints.None() {
			return complaintsInto(newObject().with("ok", yes(false)).with("code", text("desk.file")), complaints).Node
		}
	}
	f := &file{root: root, readOnly: job.ReadOnly(root)}
	d.files[name] = f
	f.takeUpPending()
	return okay().with("job", text(f.job().ID())).with("title", text(f.job().Title())).with("readOnly", yes(f.readOnly)).Node
}

// takeUpPending enters what a host had journalled but could not hand to a
// core: it stands in the file as requests under "pending".
func (f *file) takeUpPending() {
	pending := f.root.Get("pending")
	if pending.Kind() != document.List || f.readOnly {
		return
	}
	f.root.Remove("pending")
	for _, request := range pending.Items() {
		if request.Kind() == document.Map {
			f.enter(request)
		}
	}
}

// complaintsInto writes complaints with their sentences.
func complaintsInto(o object, c document.Complaints) object {
	list := document.NewList()
	for _, one := range c.List {
		says := words.Say(one.Code, one.Found, one.Allowed, one.Example)
		list.Append(newObject().with("code", text(one.Code)).with("path", text(one.Path)).with("line", whole(one.Line)).
			with("found", text(one.Found)).with("allowed", text(one.Allowed)).with("example", text(one.Example)).with("says", text(says)).Node)
	}
	says := ""
	if len(c.List) > 0 {
		says = list.Item(0).Get("says").Text()
	}
	return o.with("says", text(says)).with("complaints", list).with("complaintCount", whole(c.Count))
}

// fileName suggests a name from the title: letters, digits and hyphens.
func (f *file) fileName() string {
	var b strings.Builder
	for _, r := range strings.ToLower(f.job().Title()) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	name := strings.Trim(b.String(), "-")
	if name == "" {
		name = "sizing"
	}
	return name + ".job.json"
}
