package desk

import (
	"math"
	"slices"
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// Copy is a copy of a job for a shell that holds no desk. As on a desk, what a
// host had journalled is taken in, and what was changed by hand is an entry by an
// unknown hand. It belongs to one goroutine.
type Copy struct{ file *file }

// ReadCopy reads a job file. Where it is bad, the complaints come back instead,
// one sentence each. The copy refers to data, which nobody may write to from
// then on.
func ReadCopy(data []byte) (*Copy, []string) {
	f, complaints := readFile(data)
	if f == nil {
		return nil, complaintsSay(complaints)
	}
	f.takeUpPending()
	return &Copy{f}, nil
}

// Join takes another copy of the same job in and returns the file of both. says
// tells what came, which fields have two values, what is damaged and what has
// become impossible together. It does not matter which copy takes in which.
// Where it cannot be done complaints come back instead.
func (c *Copy) Join(other *Copy) (joined []byte, says, complaints []string) {
	f := c.file
	answer := f.unite(other.file)
	if !answer.Get("ok").Bool() {
		return nil, nil, []string{answer.Get("says").Text()}
	}
	says = append(says, words.Say("desk.came", answer.Get("entries").Raw(), answer.Get("lines").Raw()))
	if n := len(f.choices); n > 0 {
		says = append(says, words.Say("choices.says", itoa(n)))
	}
	for _, choice := range f.choices {
		says = append(says, f.choiceSays(choice))
	}
	says = append(says, f.harm...)
	return f.root.Stable(), append(says, f.problems()...), nil
}

// choiceSays writes an open choice in one line: the field, and who states what
// on which device and when.
func (f *file) choiceSays(c history.Choice) string {
	path := "/now" + c.Path
	var options []string
	for _, o := range c.Options {
		said := f.origin(path, o)
		by := []string{said.Get("who").Text(), o.Device, o.At}
		by = slices.DeleteFunc(by, func(s string) bool { return s == "" })
		options = append(options, words.Say("desk.stated", said.Get("says").Text(), strings.Join(by, words.Say("value.and"))))
	}
	return words.Say("place", f.place(path), strings.Join(options, words.Say("desk.between")))
}

// History returns who stated what at a path of the file and below, the latest
// first, as JSON; "" is the whole of "now". The fields, by name:
//
//	format        "gaugewright history"
//	job, title    as in the file
//	path, label   what was asked for
//	count         how many entries there are
//	rows[]        one entry each
//	  says        the value
//	  who, device, at, why, sitting, s
//	  fields[]    label, says: every field that the entry states
func (c *Copy) History(path string) (answer []byte, complaints []string) {
	f := c.file
	if path == "" {
		path = "/now"
	}
	var trace []history.Origin
	if path == "/now" || strings.HasPrefix(path, "/now/") {
		trace = history.Read(f.root).Trace(path[len("/now"):])
	}
	if len(trace) == 0 && path != "/now" {
		return nil, []string{words.Say("desk.nowhere", path)}
	}
	slices.Reverse(trace)
	return f.about("gaugewright history").with("path", text(path)).with("label", text(f.place(path))).
		with("count", whole(len(trace))).with("rows", f.historyRows(path, trace, math.MaxInt)).Stable(), nil
}

// about begins an answer about a file.
func (f *file) about(format string) object {
	return newObject().with("format", text(format)).with("job", text(f.job().ID())).with("title", text(f.job().Title()))
}

// Compare returns the fields that two files state differently, as JSON. They
// need not be copies of one job. The fields, by name:
//
//	format        "gaugewright comparison"
//	job, title    as in this file
//	other         job, title of the other
//	onlyHere, onlyThere   how many entries of the history one has and the other has not
//	records       same | different: what happened is not compared further
//	count         how many fields differ
//	differences[] path, label, before (here), after (there)
func (c *Copy) Compare(other *Copy) []byte {
	f, g := c.file, other.file
	records := "same"
	if !f.root.Get("records").Equal(g.root.Get("records")) {
		records = "different"
	}
	differences := history.Compare(f.root.Get("now"), g.root.Get("now"))
	list := document.NewList()
	for _, d := range differences {
		list.Append(difference(d, f, g))
	}
	return f.about("gaugewright comparison").
		with("other", newObject().with("job", text(g.job().ID())).with("title", text(g.job().Title())).Node).
		with("onlyHere", whole(history.Lacking(g.root, f.root))).with("onlyThere", whole(history.Lacking(f.root, g.root))).
		with("records", text(records)).with("count", whole(len(differences))).with("differences", list).Stable()
}

// Between returns the fields that differ between the states at two times, as
// JSON: format, job, title, from, to, count and differences as in [Copy.Compare].
// A time is a moment in UTC or a day, which begins at midnight; a blank "to" is
// the present. The clocks are those of the devices.
func (c *Copy) Between(from, to string) (answer []byte, complaints []string) {
	f := c.file
	for _, t := range []string{from, to} {
		if !job.IsInstant(t) && !job.IsInstant(t+"T00:00:00Z") && (t != "" || t == from) {
			complaints = append(complaints, words.Say("desk.moment", t))
		}
	}
	if complaints != nil {
		return nil, complaints
	}
	differences := f.between(from, to)
	list := document.NewList()
	for _, d := range differences {
		list.Append(difference(d, f, f))
	}
	return f.about("gaugewright comparison").with("from", text(from)).with("to", text(to)).
		with("count", whole(len(differences))).with("differences", list).Stable(), nil
}
