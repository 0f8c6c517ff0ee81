package desk

import (
	"slices"
	"sort"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/history"
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
// once: records change by a union only.
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
			f.question = f.asked(list, patch, words.Say("outcome.reason"))
			return nil, ""
		}
	} else if len(list) > 0 {
		m := f.renewal(patch)
		if r.Get("renew") == nil || m == nil {
			f.question = f.asked(list, patch, "")
			return nil, ""
		}
		made, ok := m.patch(patch, r.Get("renew"), dayOf(r.Get("at").Text()))
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
	f.choices = slices.DeleteFunc(slices.Clone(choices), func(c history.Choice) bool { return patch.At(c.Path) != nil })
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
// a patch changes.
func (f *file) touched(patch *document.Node) (list []string) {
	some := false
	for _, name := range []string{"piles", "criteria", "pileTypes", "rigs", "gauges", "certificates", "stock", "guard"} {
		some = some || patch.Get(name) != nil
	}
	if !some {
		return nil
	}
	all := patch.Get("stock") != nil || patch.Get("guard") != nil
	has := func(collection, id string) bool { return id != "" && patch.Get(collection).Get(id) != nil }
	// What a certificate is of, before and after.
	of := map[string]bool{}
	for id, c := range patch.Get("certificates").Members() {
		for _, node := range []*document.Node{c, f.now("certificates").Get(id)} {
			of["rigs "+node.Get("rig").Text()], of["gauges "+node.Get("gauge").Text()] = true, true
		}
	}
	certificates := len(of) > 0
	piles := f.now("piles")
	for pile, stretches := range f.pressedPiles() {
		p := piles.Get(pile)
		if p == nil || struckOut(p) {
			delete(f.outcomes, pile) // it is not judged, so what came out does not hold
			continue
		}
		hit := all || has("piles", pile) || has("criteria", p.Get("criterion").Text()) || has("pileTypes", p.Get("type").Text())
		for _, s := range stretches {
			rig := s.Rig
			if rig == "" {
				rig = p.Get("rig").Text()
			}
			hit = hit || has("rigs", rig) || has("gauges", s.Gauge) || s.Gauge == "" && patch.Get("gauges") != nil ||
				certificates && (s.Gauge == "" || of["rigs "+rig] || of["gauges "+s.Gauge])
		}
		if hit {
			list = append(list, pile)
		}
	}
	return list
}

// mostPressed is how many piles a question names.
const mostPressed = 20

// marks names piles, and says how many more there are.
func (f *file) marks(piles []string) string {
	names := []string{}
	for _, id := range piles[:min(len(piles), mostPressed)] {
		names = append(names, f.marked(id, f.now("piles").Get(id).Get("mark").Text()))
	}
	if more := len(piles) - len(names); more > 0 {
		return words.Say("outcome.more", strings.Join(names, ", "), itoa(more))
	}
	return strings.Join(names, ", ")
}

// asked is the question about a patch that would turn outcomes.
func (f *file) asked(list []turned, patch *document.Node, lead string) *document.Node {
	var all []string
	for _, t := range list {
		all = append(all, t.pile)
	}
	says := []string{words.Say("outcome.pressed", itoa(len(list)))}
	if len(list) == 1 {
		says = []string{words.Say("outcome.one")}
	}
	if lead != "" {
		says = append([]string{lead}, says...)
	}
	says = append(says, f.turns(list, "set", func(o drive.Outcome) drive.Answer { return o.Reached })...)
	says = append(says, f.turns(list, "never", func(o drive.Outcome) drive.Answer { return o.Passed })...)
	turns := newObject().with("reason", text(words.Say("outcome.why"))).with("correct", text(words.Say("outcome.correct"))).
		with("correctSays", text(words.Say("outcome.correctSays"))).with("leave", text(words.Say("outcome.leave")))
	if m := f.renewal(patch); m != nil {
		turns = turns.with("renew", text(words.Say("outcome.renew"))).with("renewSays", text(words.Say("outcome.renewSays", itoa(m.moves)))).with("ids", whole(m.ids))
	}
	shown := []string{}
	for _, id := range all[:min(len(all), mostPressed)] {
		shown = append(shown, f.marked(id, f.now("piles").Get(id).Get("mark").Text()))
	}
	return newObject().with("ok", yes(false)).with("code", text("outcome.turns")).with("says", text(strings.Join(append(says, words.Say("outcome.nothing")), " "))).
		with("piles", texts(shown)).with("count", whole(len(all))).with("turns", turns.Node).Node
}

// turns says how one of the answers turns, and for which piles.
func (f *file) turns(list []turned, what string, of func(drive.Outcome) drive.Answer) (says []string) {
	name := map[drive.Answer]string{drive.NotKnown: "outcome.unknown", drive.No: "outcome.no." + what, drive.Yes: "outcome.yes." + what}
	for _, was := range []drive.Answer{drive.Yes, drive.No, drive.NotKnown} {
		for _, now := range []drive.Answer{drive.Yes, drive.No, drive.NotKnown} {
			var piles []string
			for _, t := range list {
				if of(t.was) == was && of(t.now) == now && was != now {
					piles = append(piles, t.pile)
				}
			}
			if len(piles) > 0 {
				says = append(says, words.Say("outcome."+what, words.Say(name[was]), words.Say(name[now]), f.marks(piles)))
			}
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

// pressedSays says of a thing which piles are pressed with it, "" for none.
func (f *file) pressedSays(path string) string {
	names, _ := document.Split(path)
	if len(names) != 4 || !slices.Contains(renewable, names[1]) {
		return ""
	}
	one, edit := document.NewMap(), document.NewMap()
	edit.Set(names[2], document.NewMap())
	one.Set(names[1], edit)
	piles := f.touched(one)
	if len(piles) == 0 {
		return ""
	}
	place := f.places(len(piles))
	sort.Slice(piles, func(a, b int) bool { return place[piles[a]] < place[piles[b]] })
	if len(piles) == 1 {
		return words.Say("outcome.withOne", f.marks(piles))
	}
	return words.Say("outcome.with", itoa(len(piles)), f.marks(piles))
}
