package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/job"
)

// A trial is "what if": texts typed and choices made that nobody has entered.
// It travels with every question about it and is answered from a copy of the
// things it touches, so nothing of it can stay in the job: a list of
//
//	{path, typed}   as the entry "type" would have it
//	{path, value}   as the entry "choose" would have it
//
// In whatever order it comes, the decimal sign counts first: what was typed is
// read with the job's. Only the entry "use" takes a trial over, whole or not at
// all.

// signFirst lists the tries with the one of the decimal sign before all others.
func signFirst(list *document.Node) []*document.Node {
	const sign = "/now/decimalSign"
	first, rest := []*document.Node(nil), []*document.Node(nil)
	for _, one := range list.Items() {
		if one.Get("path").Text() == sign {
			first = append(first, one)
		} else {
			rest = append(rest, one)
		}
	}
	return append(first, rest...)
}

// trial returns the file as the trial would make it; f itself when there is
// none. The texts that cannot be read stand in its "unread".
func (f *file) trial(list *document.Node) (*file, *document.Node) {
	if list.Kind() != document.List || list.Len() == 0 {
		return f, nil
	}
	root := shallow(f.root)
	now := shallow(f.root.Get("now"))
	root.Set("now", now)
	if unread := f.root.Get("unread"); unread != nil {
		root.Set("unread", unread.Clone())
	}
	t := &file{root: root, choices: f.choices, levels: f.levels, day: f.day, readOnly: f.readOnly, tried: map[string]bool{}}
	touched := map[string]bool{}
	for _, one := range signFirst(list) {
		path := one.Get("path").Text()
		field, ok := job.FieldAt(path)
		if !ok || !f.owned(path) {
			return nil, refusal("desk.path", path)
		}
		t.touch(path, touched)
		t.tried[path] = true
		var value string
		if chosen := one.Get("value"); chosen != nil {
			value = chosen.Text()
			if problem := field.Problem(value); problem != nil {
				return nil, refusal("typed.choice", problem.Found, problem.Allowed)
			}
		} else {
			typed := one.Get("typed").Text()
			read, problem := t.read(field, path, typed)
			if value = read; problem != nil {
				t.remember(path, typed)
			} else {
				t.forget(path)
			}
		}
		patch, ok := t.job().Patch(path, text(value))
		if !ok {
			return nil, refusal("desk.path", path)
		}
		document.MergePatch(now, patch)
	}
	return t, nil
}

// touch makes the thing that a path leads into the trial's own.
func (f *file) touch(path string, touched map[string]bool) {
	names, _ := document.Split(path)
	now := f.root.Get("now")
	if len(names) < 3 {
		return
	}
	collection := names[1]
	if !touched[collection] {
		touched[collection] = true
		now.Set(collection, shallow(now.Get(collection)))
	}
	if key := collection + "/" + names[2]; !touched[key] {
		touched[key] = true
		if things := now.Get(collection); things.Get(names[2]) != nil {
			things.Set(names[2], things.Get(names[2]).Clone())
		}
	}
}

// shallow copies a map without what stands in it.
func shallow(n *document.Node) *document.Node {
	m := document.NewMap()
	for name, value := range n.Members() {
		m.Set(name, value)
	}
	return m
}

// use takes a trial over, as one entry that can be taken back as one.
func (f *file) use(r *document.Node) *document.Node {
	list := r.Get("trial")
	t, refused := f.trial(list)
	if refused != nil {
		return refused
	}
	patch := document.NewMap()
	for _, one := range list.Items() {
		path := one.Get("path").Text()
		if t.root.Get("unread").Get(path) != nil {
			return refusal("desk.trialUnread")
		}
		p, ok := t.job().Patch(path, t.root.At(path).Clone())
		if !ok {
			return refusal("desk.path", path)
		}
		document.MergePatch(patch, p)
	}
	for _, one := range list.Items() {
		f.forget(one.Get("path").Text())
	}
	if patch.Len() > 0 && !f.holds(patch) {
		f.change(r, patch, false)
	}
	return okay().Node
}
