package desk

import (
	"sort"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// An edit that would turn the outcome of piles already pressed is not entered
// but asked about. The answer is a refusal, "outcome.turns", that says which
// piles, with two ways to make the same request again:
//
//	correction  the reason: what stands was wrong from the beginning, and the
//	            piles pressed are judged anew
//	renew       ids: what is edited stays, and a copy with the edit is for the
//	            piles not pressed yet; see renewal
//
// A text that is asked about stands in its box only. Its request may say by "or"
// what stood there before it was typed: key presses before it that turned nothing
// were entered, and a host keeps only the last one of a box.
//
// A union of copies is no edit and is not asked about: what differs after it
// differs because of what others entered. Settling a choice that it left open is
// an edit.

// turned is a pile with the outcome that an edit would turn.
type turned struct {
	pile     string
	was, now drive.Outcome
}

// pressedPiles are the piles that are pressed, with what was read. They are read
// once: whoever adds to a drive, as a union does, sets f.pressed to nil.
func (f *file) pressedPiles() map[string][]job.Stretch {
	if f.pressed == nil {
		f.pressed, f.outcomes = f.job().Pressed(), map[string]drive.Outcome{}
	}
	return f.pressed
}

// guard decides on an entry of a patch that is about to be made: the patch to be
// entered, nil for none. What is asked instead is noted.
func (f *file) guard(r, patch *document.Node) (entered *document.Node, why string) {
	why = r.Get("why").Text()
	list, after := f.turning(patch)
	if correction := r.Get("correction"); correction != nil {
		if why = strings.TrimSpace(correction.Text()); why == "" && len(list) > 0 {
			f.question = f.asked(list, patch, words.Say("outcome.blank"))
			return nil, ""
		}
	} else if len(list) > 0 {
		m := f.renewal(patch)
		if r.Get("renew") == nil || m == nil {
			f.question = f.asked(list, patch, "")
			return nil, ""
		}
		made, ok := m.patch(patch, r.Get("renew"), job.Day(r.Get("at").Text()))
		if !ok {
			f.question = refusal("desk.ids")
			return nil, ""
		}
		if list, after = f.turning(made); len(list) > 0 {
			f.question = f.asked(list, made, "")
			return nil, ""
		}
		patch, f.renewed = made, m.place(r.Get("path").Text())
	}
	for pile, o := range after {
		f.outcomes[pile] = o
	}
	return patch, why
}

// turning judges the pressed piles that a patch of "now" may touch, before and
// with it: those whose outcome it would turn, in the order of their marks, and
// what would come out.
func (f *file) turning(patch *document.Node) (list []turned, after map[string]drive.Outcome) {
	piles := f.touched(patch)
	if len(piles) == 0 {
		return nil, nil
	}
	f.outcome(piles)
	now, choices := f.root.Get("now"), f.choices
	back := document.Inverse(now, patch)
	document.MergePatch(now, patch)
	f.choices = nil
	for _, c := range choices {
		if patch.At(c.Path) == nil {
			f.choices = append(f.choices, c)
		}
	}
	after = map[string]drive.Outcome{}
	judge := assess.OutcomesOf(f.decided())
	for _, pile := range piles {
		if struckOut(f.now("piles").Get(pile)) {
			continue
		}
		after[pile] = judge.Of(pile, f.pressed[pile])
		if was := f.outcomes[pile]; was != after[pile] {
			list = append(list, turned{pile, was, after[pile]})
		}
	}
	document.MergePatch(now, back)
	f.choices = choices
	place := f.places(len(list))
	sort.Slice(list, func(a, b int) bool { return place[list[a].pile] < place[list[b].pile] })
	return list, after
}

// places are those of the piles in the order of their marks; nobody asks for the
// order of one.
func (f *file) places(count int) map[string]int {
	place := map[string]int{}
	if count > 1 {
		for i, id := range f.pilesInOrder() {
			place[id] = i
		}
	}
	return place
}

// outcome judges piles as the job stands. An outcome once known holds: no entry
// turns it without a correction, which brings the new one.
func (f *file) outcome(piles []string) {
	var judge *assess.Outcomes
	for _, pile := range piles {
		if _, known := f.outcomes[pile]; known {
			continue
		}
		if judge == nil {
			judge = assess.OutcomesOf(f.decided())
		}
		f.outcomes[pile] = judge.Of(pile, f.pressed[pile])
	}
}

// touched lists the pressed piles, not struck out, whose outcome may hang on what
// a patch changes. Gauges and certificates are found by their circuits only, so an
// edit of one is held against all piles.
func (f *file) touched(patch *document.Node) (list []string) {
	some, all := false, false
	for i, name := range []string{"piles", "criteria", "pileTypes", "rigs", "gauges", "certificates", "stock", "guard"} {
		if patch.Get(name) != nil {
			some, all = true, all || i > 3
		}
	}
	if !some {
		return nil
	}
	piles, has := f.now("piles"), func(collection, id string) bool { return patch.Get(collection).Get(id) != nil }
	look := func(pile string, stretches []job.Stretch) {
		p := piles.Get(pile)
		if p == nil || struckOut(p) {
			delete(f.outcomes, pile) // it is not judged, so what came out does not hold
			return
		}
		hit := all || has("piles", pile) || has("criteria", p.Get("criterion").Text()) || has("pileTypes", p.Get("type").Text())
		for _, s := range stretches {
			hit = hit || has("rigs", s.Rig) || s.Rig == "" && has("rigs", p.Get("rig").Text())
		}
		if hit {
			list = append(list, pile)
		}
	}
	pressed := f.pressedPiles()
	if edited := patch.Get("piles"); patch.Len() == 1 && edited != nil {
		for pile := range edited.Members() { // the key presses of a job: no other pile is looked at
			if stretches, there := pressed[pile]; there {
				look(pile, stretches)
			}
		}
		return list
	}
	for pile, stretches := range pressed {
		look(pile, stretches)
	}
	return list
}

// mostPressed is how many piles a question names.
const mostPressed = 20

// marks names the first of some piles, and says how many more there are.
func (f *file) marks(piles []string) (says string, names []string) {
	for _, id := range piles[:min(len(piles), mostPressed)] {
		names = append(names, f.marked(id, f.now("piles").Get(id).Get("mark").Text()))
	}
	says = strings.Join(names, ", ")
	if more := len(piles) - len(names); more > 0 {
		says = words.Say("outcome.more", says, itoa(more))
	}
	return says, names
}

// asked is the question about a patch that would turn outcomes.
func (f *file) asked(list []turned, patch *document.Node, lead string) *document.Node {
	var all []string
	for _, t := range list {
		all = append(all, t.pile)
	}
	code := "outcome.pressed"
	if len(list) == 1 {
		code = "outcome.one"
	}
	says := strings.TrimSpace(lead+" "+words.Say(code, itoa(len(list)))) + " " + f.turns(list, "set", wasReached) + f.turns(list, "never", wasPassed) + words.Say("outcome.nothing")
	turns := newObject()
	for _, name := range []string{"reason", "correct", "correctSays", "leave"} {
		turns.Set(name, text(words.Say("outcome."+name)))
	}
	if m := f.renewal(patch); m != nil {
		turns.Set("renew", text(words.Say("outcome.renew")))
		turns.Set("renewSays", text(words.Say("outcome.renewSays", itoa(m.moves))))
		turns.Set("ids", whole(m.ids))
	}
	_, names := f.marks(all)
	return newObject().with("ok", yes(false)).with("code", text("outcome.turns")).with("says", text(says)).
		with("piles", texts(names)).with("count", whole(len(all))).with("turns", turns.Node).Node
}

func wasReached(o drive.Outcome) drive.Answer { return o.Reached }
func wasPassed(o drive.Outcome) drive.Answer  { return o.Passed }

// turns says how one of the answers turns, and for which piles.
func (f *file) turns(list []turned, what string, of func(drive.Outcome) drive.Answer) (says string) {
	name := [...]string{drive.NotKnown: "outcome.unknown", drive.No: "outcome.no." + what, drive.Yes: "outcome.yes." + what}
	var piles [len(name) * len(name)][]string // by the answer before and with the edit
	for _, t := range list {
		at := int(of(t.was))*len(name) + int(of(t.now))
		piles[at] = append(piles[at], t.pile)
	}
	for at := len(piles) - 1; at >= 0; at-- {
		if was, now := at/len(name), at%len(name); was != now && len(piles[at]) > 0 {
			marks, _ := f.marks(piles[at])
			says += words.Say("outcome."+what, words.Say(name[was]), words.Say(name[now]), marks) + " "
		}
	}
	return says
}

// asking turns the answer of an entry that was not made into the question about
// it. Texts that cannot be read are as they were.
func (f *file) asking(r, answer, unread *document.Node) *document.Node {
	question := f.question
	f.unasked(unread)
	if p := answer.Get("problem"); p != nil {
		// The text cannot be read either: that comes first, and has no ways here.
		says := text(p.Get("says").Text() + " " + words.Say("outcome.unread"))
		p.Set("says", says)
		question = newObject().with("ok", yes(false)).with("code", text("outcome.unread")).with("says", says).with("problem", p).Node
	}
	if before := r.Get("or"); before.Kind() == document.Text && r.Get("correction") == nil && r.Get("renew") == nil {
		unread = f.root.Get("unread").Clone()
		if f.typed(r, r.Get("path").Text(), before.Text()); f.question != nil {
			f.unasked(unread)
		}
	}
	return question
}

// unasked drops the question, and what was noted of texts before it came.
func (f *file) unasked(unread *document.Node) {
	f.question = nil
	if unread == nil {
		f.root.Remove("unread")
	} else {
		f.root.Set("unread", unread)
	}
	f.unreadChanged()
}

// pressedSays says of the criterion, rig or pile type that a name belongs to which
// piles are pressed with it, "" for none.
func (f *file) pressedSays(path string) string {
	patch, _ := f.job().Patch(path, text(""))
	piles := f.touched(patch)
	if len(piles) == 0 {
		return ""
	}
	place := f.places(len(piles))
	sort.Slice(piles, func(a, b int) bool { return place[piles[a]] < place[piles[b]] })
	marks, _ := f.marks(piles)
	if len(piles) == 1 {
		return words.Say("outcome.withOne", marks)
	}
	return words.Say("outcome.with", itoa(len(piles)), marks)
}
