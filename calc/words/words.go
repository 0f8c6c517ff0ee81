// Package words holds every sentence and label of the product, one catalogue a
// language. Everything else speaks in codes and arguments: a code with numbers
// goes in, a sentence comes out. Arguments are texts already set with their
// units by the packages that computed them.
package words

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"gaugewright/calc/assess"
)

// Say returns the sentence of a code with its arguments in the places {0},
// {1} and so on. An unknown code is shown as itself: a missing sentence must
// never hide a number.
func Say(code string, args ...string) string {
	text, ok := english[code]
	if !ok {
		return strings.Join(append([]string{code}, args...), " ")
	}
	for i, a := range args {
		text = strings.ReplaceAll(text, "{"+strconv.Itoa(i)+"}", a)
	}
	return text
}

// Has says whether there is a sentence for a code.
func Has(code string) bool {
	_, ok := english[code]
	return ok
}

// Note returns the sentence of a note.
func Note(n assess.Note) string { return Say(n.Code, n.Args...) }

// Notes returns the sentences of notes.
func Notes(list []assess.Note) []string {
	said := make([]string, 0, len(list))
	for _, n := range list {
		said = append(said, Note(n))
	}
	return said
}

// List joins names as in a sentence: "factor, rig and circuit".
func List(names []string) string {
	switch len(names) {
	case 0:
		return ""
	case 1:
		return names[0]
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + Say("list.and") + names[last]
}

// late are the first parts of the keys of labels that only screens with a
// running core show: the page gets them from the core and need not bring them.
var late = []string{"bring", "card", "choices", "compare", "convert", "fleet", "handout", "history", "joined", "limit", "pick", "plan", "sheet", "trial", "waiver", "working"}

// Labels returns the labels of the page: every entry whose code begins with
// "page.", by the rest of its code. The late ones are those that only screens
// with a running core show, the others what a page must bring along.
func Labels(ofLate bool) (keys []string, texts map[string]string) {
	texts = map[string]string{}
	for code, text := range english {
		key, ok := strings.CutPrefix(code, "page.")
		first, _, _ := strings.Cut(key, ".")
		if ok && slices.Contains(late, first) == ofLate {
			keys, texts[key] = append(keys, key), text
		}
	}
	sort.Strings(keys)
	return keys, texts
}

// Codes returns every code of the catalogue, sorted.
func Codes() []string {
	list := make([]string, 0, len(english))
	for code := range english {
		list = append(list, code)
	}
	sort.Strings(list)
	return list
}
