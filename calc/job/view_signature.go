package job

import (
	"sort"

	"gaugewright/calc/document"
)

// ReleaseToCut is the kind of signature that lets a crew saw.
const ReleaseToCut = "release to cut"

// Signature is what a person signed of some piles.
type Signature struct {
	ID, Kind, Name, Role, On string
	piles                    *document.Node
}

// Of returns what is signed of a pile; ok is false where the pile is not among
// those signed.
func (s Signature) Of(pile string) (what string, ok bool) {
	n := s.piles.Get(pile)
	return n.Text(), n != nil
}

// Signatures lists those of a kind that are not struck out, by their time.
func Signatures(root *document.Node, kind string) []Signature {
	var list []Signature
	for id, n := range root.Get("signatures").Members() {
		if n.Get("kind").Text() != kind || n.Get("struck") != nil {
			continue
		}
		list = append(list, Signature{ID: id, Kind: kind, Name: n.Get("name").Text(), Role: n.Get("role").Text(), On: n.Get("on").Text(), piles: n.Get("piles")})
	}
	sort.Slice(list, func(a, b int) bool {
		if list[a].On != list[b].On {
			return list[a].On < list[b].On
		}
		return list[a].ID < list[b].ID
	})
	return list
}
