package desk

import (
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/history"
	"gaugewright/calc/job"
	"gaugewright/calc/words"
)

// showCutting is the list for the crew that cuts, sorted for a walk: the piles
// whose heads are surveyed, each with what to do, from where to measure, and
// whether a person has released it. Others are counted, not listed: nobody may
// saw from a level that is only expected.
func (f *file) showCutting(r *document.Node) *document.Node {
	piles, waiting := f.surveyed()
	releases := job.Signatures(f.root, job.ReleaseToCut)
	var says []string
	if waiting > 0 {
		says = append(says, words.Say("cutting.waiting", itoa(waiting)))
	}
	from, to := pageOf(r, len(piles))
	var lines []*document.Node
	open := 0
	for i, id := range piles {
		a, _ := f.judge().Pile(id, nil)
		released, said := f.released(releases, a)
		if !released {
			open++
		}
		if i < from || i >= to {
			continue
		}
		a, _ = f.answer(id)
		lines = append(lines, f.cutLine(a, said))
	}
	s := f.sheet("cutting").with("lead", texts(append(says, words.Say("note.releaseToCut")))).
		with("groups", document.NewList(newGroup(words.Say("cutting.piles"), "", nil, lines...))).
		with("count", whole(len(piles))).with("from", whole(from))
	if open > 0 && !f.readOnly {
		sign := words.Say("release.sign", itoa(open))
		s = s.with("boxes", document.NewList(box("release", sign, words.Say("release.says"), sign, nil,
			plainInput("name", words.Say("sign.name")), plainInput("role", words.Say("sign.role")))))
	}
	return s.Node
}

// surveyed lists the piles whose heads are surveyed, in the order of a walk,
// and counts the others.
func (f *file) surveyed() (piles []string, others int) {
	f.judge()
	for _, id := range f.pilesInOrder() {
		if _, there := f.levels[id]; there {
			piles = append(piles, id)
		} else {
			others++
		}
	}
	return f.judge().Walk(piles), others
}

func (f *file) cutLine(a assess.Answer, released string) *document.Node {
	h := a.Head
	value := h.Cut
	if h.BuildUp != nil {
		value = h.BuildUp
	}
	says := []string{f.headSays(h)}
	if h.Cut != nil && h.Above != nil {
		code, above := "cutting.above", *h.Above
		if above.V < 0 {
			code, above.V = "cutting.below", -above.V
		}
		says = append(says, words.Say(code, f.textOf(&above)), words.Say("cutting.keep", f.textOf(h.Cut)))
	}
	return f.line(f.marked(a.ID, a.Mark), value, strings.Join(append(says, released), " "))
}

// released says who released the saw cut of a pile. A release holds for the
// level that was signed and no other.
func (f *file) released(list []job.Signature, a assess.Answer) (yes bool, says string) {
	if a.Head.State != "to cut" {
		return true, ""
	}
	saw := f.sawSigned(a)
	for i := len(list) - 1; i >= 0; i-- {
		signed, ok := list[i].Of(a.ID)
		switch {
		case !ok:
		case signed == saw:
			return true, words.Say("release.by", list[i].Name, list[i].Role, job.Day(list[i].On))
		default:
			return false, words.Say("release.stale", list[i].Name, signed)
		}
	}
	return false, words.Say("release.none")
}

// sawSigned is the level of the saw cut as a signature holds it.
func (f *file) sawSigned(a assess.Answer) string { return a.Head.Saw.Text('.') }

// release signs the saw cuts of all surveyed piles that are not released yet:
// the level of each stands in the signature.
func (f *file) release(r *document.Node) *document.Node {
	id, name := r.Get("ids").Item(0).Text(), strings.TrimSpace(r.Get("name").Text())
	role := strings.TrimSpace(r.Get("role").Text())
	switch {
	case id == "":
		return refusal("desk.ids")
	case name == "" || role == "":
		return refusal("release.who")
	}
	releases := job.Signatures(f.root, job.ReleaseToCut)
	signed := document.NewMap()
	piles, _ := f.surveyed()
	for _, pile := range piles {
		a, _ := f.judge().Pile(pile, nil)
		if done, _ := f.released(releases, a); !done {
			signed.Set(pile, text(f.sawSigned(a)))
		}
	}
	if signed.Len() == 0 {
		return refusal("release.nothing")
	}
	s := newObject().with("kind", text(job.ReleaseToCut)).with("name", text(name)).with("role", text(role)).
		with("sentence", text(words.Say("release.sentence"))).with("piles", signed)
	if at := moment(r.Get("at").Text()); at != "" {
		s = s.with("on", text(at))
	}
	history.Sign(f.root, id, s.Node)
	return okay().Node
}
