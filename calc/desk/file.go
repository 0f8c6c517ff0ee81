package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// file is one open document.
type file struct {
	root     *document.Node
	choices  []history.Choice // open ones: two values for one field
	harm     []string         // what is wrong with the history
	readOnly bool
	day      string          // of use, as the host says it: YYYY-MM-DD
	tried    map[string]bool // paths of a trial: what stands there was never entered

	// What was worked out from the present tree; see changed.
	judged    *assess.Job
	levels    map[string]job.HeadLevel
	answers   map[string]assess.Answer
	order     []string        // ids of the piles in the order of their marks
	twins     map[string]bool // piles whose mark another one has as well
	orderMade *assess.Order
	preview   *preview // of a table of piles, until something is entered

	// What is pressed; see outcome.go.
	pressed  map[string][]job.Stretch // nil until somebody asks
	outcomes map[string]drive.Outcome // of piles that were judged
	question *document.Node           // about the entry under way, which was not made
	renewed  string                   // the form of what the entry under way made for the piles to come
}

func (f *file) job() job.Job { return job.View(f.root) }

// decided is the job as it is computed with. A field with an open choice holds
// neither value.
func (f *file) decided() job.Job {
	if len(f.choices) > 0 {
		return job.View(f.undecided())
	}
	return f.job()
}

// judge returns the judge of the present tree.
func (f *file) judge() *assess.Job {
	if f.judged == nil {
		if f.levels == nil {
			f.levels = f.job().HeadLevels()
		}
		f.judged, f.answers = assess.Of(f.decided(), f.levels, f.day), map[string]assess.Answer{}
	}
	return f.judged
}

// on sets the day of use.
func (f *file) on(day string) {
	if f.day != day {
		f.day, f.judged, f.orderMade = day, nil, nil
	}
}

// twoValues stands in a contested field of the judge's tree. It is no quantity,
// no choice and no id, so nothing can be computed with it.
const twoValues = "two values"

func (f *file) undecided() *document.Node {
	root := document.NewMap()
	for name, value := range f.root.Members() {
		root.Set(name, value)
	}
	now := f.root.Get("now").Clone()
	root.Set("now", now)
	for _, c := range f.choices {
		field, ok := job.FieldAt("/now" + c.Path)
		if !ok || field.Kind == job.Words {
			continue
		}
		if patch, ok := job.View(root).Patch("/now"+c.Path, text(twoValues)); ok {
			document.MergePatch(now, patch)
		}
	}
	return root
}

// changed forgets what was worked out from the tree as it was before a patch
// of "now": the answers of the piles in it where it holds nothing but piles,
// else all answers. Choices can only be settled by an entry, never made by one.
func (f *file) changed(patch *document.Node) {
	f.orderMade = nil
	piles := patch.Get("piles")
	if patch.Len() != 1 || reorders(piles) {
		f.order = nil
	}
	if len(f.choices) > 0 {
		f.choices = history.Read(f.root).Choices()
		f.judged = nil
		return
	}
	if f.judged == nil || patch.Len() != 1 || piles.Kind() != document.Map {
		f.judged = nil
		return
	}
	for id := range piles.Members() {
		delete(f.answers, id)
	}
}

// reorders says whether a patch of the piles may change which there are, or
// their order.
func reorders(piles *document.Node) bool {
	for _, p := range piles.Members() {
		if p.Len() == 0 || p.Get("mark") != nil || p.Get("struck") != nil {
			return true
		}
	}
	return false
}

// pilesInOrder lists the piles by their marks. Sorting thousands of marks on
// every key press would be felt.
func (f *file) pilesInOrder() []string {
	if f.order == nil {
		f.order, f.twins = f.job().Piles(), map[string]bool{}
		piles := f.root.Get("now").Get("piles")
		for i, id := range f.order {
			if mark := piles.Get(id).Get("mark").Text(); i > 0 && mark != "" && piles.Get(f.order[i-1]).Get("mark").Text() == mark {
				f.twins[id], f.twins[f.order[i-1]] = true, true
			}
		}
	}
	return f.order
}

// marked is the mark of a pile as lists show it: one that another pile has as
// well says so.
func (f *file) marked(id, mark string) string {
	if f.pilesInOrder(); f.twins[id] {
		return words.Say("thing.twin", mark)
	}
	return named(mark)
}

// mostAnswers bounds how many answers are remembered.
const mostAnswers = 300

// answer assesses a pile, with the places of its numbers; their working is made
// when one of them is opened.
func (f *file) answer(pile string) (assess.Answer, bool) {
	judged := f.judge()
	if a, known := f.answers[pile]; known {
		return a, true
	}
	a, ok := judged.Pile(pile, working.NewPlaces(""))
	if ok {
		if len(f.answers) >= mostAnswers {
			clear(f.answers)
		}
		f.answers[pile] = a
	}
	return a, ok
}

// open makes a new document ("as": "new", with three ids: job, pile,
// criterion; the name "shelf" makes one without a pile) or reads one from
// bytes. What cannot be read is not opened, and nothing else changes.
func (d *Desk) open(r *document.Node, name string, data []byte) *document.Node {
	f, refused := opened(r, name, data)
	if refused != nil {
		return refused
	}
	d.files[name] = f
	f.on(d.day)
	f.takeUpPending()
	return f.openAnswer()
}

func opened(r *document.Node, name string, data []byte) (f *file, refused *document.Node) {
	if r.Get("as").Text() == "new" && len(data) == 0 {
		ids := r.Get("ids")
		if ids.Len() < 3 {
			return nil, refusal("desk.ids")
		}
		// The id is the host's, never the document's name: "sizing" is the name
		// of a document on every device.
		id := ids.Item(0).Text()
		root := job.Empty(id)
		if name == "shelf" {
			return &file{root: root}, nil
		}
		history.Enter(root, history.Sitting{ID: id}, history.Change{Patch: job.First(ids.Item(1).Text(), ids.Item(2).Text())})
		return &file{root: root}, nil
	}
	f, complaints := readFile(data)
	if f == nil {
		return nil, complaintsInto(newObject().with("ok", yes(false)).with("code", text("desk.file")), complaints).Node
	}
	return f, nil
}

// readFile reads and checks a job file, and looks through its history.
func readFile(data []byte) (*file, document.Complaints) {
	root, complaints := document.ReadOwned(data)
	if complaints.None() {
		job.Migrate(root)
		complaints = job.Check(root)
	}
	if !complaints.None() {
		return nil, complaints
	}
	f := &file{root: root, readOnly: job.ReadOnly(root)}
	if !f.readOnly {
		l := history.Read(root)
		if l.Reconcile() {
			l = history.Read(root)
		}
		f.noteHistory(l)
	}
	return f, complaints
}

func (f *file) openAnswer() *document.Node {
	j := f.job()
	return okay().with("job", text(j.ID())).with("title", text(j.Title())).with("readOnly", yes(f.readOnly)).
		with("choices", whole(len(f.choices))).with("damage", texts(f.harm)).with("problems", texts(f.problems())).Node
}

// readHistory looks for open choices and for damage.
func (f *file) readHistory() { f.noteHistory(history.Read(f.root)) }

func (f *file) noteHistory(l *history.Log) {
	f.choices, f.harm = l.Choices(), nil
	for _, d := range l.Damage() {
		f.harm = append(f.harm, damageSays(d))
	}
	if n := f.root.Get("disputed").Len(); n > 0 {
		f.harm = append(f.harm, words.Say("history.disputed", itoa(n)))
	}
}

func damageSays(d history.Damage) string {
	if d.Code == history.Cycle {
		return words.Say(d.Code, words.List(d.Args))
	}
	return words.Say(d.Code, d.Args...)
}

// problems says what is impossible together.
func (f *file) problems() []string {
	list := []string{}
	for _, c := range job.Problems(f.root).List {
		list = append(list, words.Say(c.Code, c.Found, c.Allowed))
	}
	return list
}

// takeUpPending enters what a host had journalled but could not hand to a
// core: it stands in the file as requests under "pending", the bytes of one as
// its "text".
func (f *file) takeUpPending() {
	pending := f.root.Get("pending")
	if pending.Kind() != document.List || f.readOnly {
		return
	}
	f.root.Remove("pending")
	for _, request := range pending.Items() {
		if request.Kind() == document.Map {
			f.enter(request, []byte(request.Get("text").Text()))
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
