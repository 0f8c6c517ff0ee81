package job

import (
	"strconv"

	"gaugewright/calc/document"
)

// Patch returns the merge patch of "now" that puts value at a path of the
// file, such as "/now/piles/p14/workingLoad". A list is atomic in a merge, so a place in a list patches the whole
// list. ok is false where the path leads nowhere below "/now".
func (j Job) Patch(path string, value *document.Node) (patch *document.Node, ok bool) {
	names, ok := document.Split(path)
	if !ok || len(names) < 2 || names[0] != "now" {
		return nil, false
	}
	return patchBelow(j.now, names[1:], value)
}

func patchBelow(n *document.Node, names []string, value *document.Node) (*document.Node, bool) {
	if len(names) == 0 {
		return value, true
	}
	if n.Kind() == document.List {
		i, err := strconv.Atoi(names[0])
		if err != nil || i < 0 || i >= n.Len() {
			return nil, false
		}
		list := document.NewList()
		for k := range n.Len() {
			item := n.Item(k)
			if k == i {
				inner, ok := patchBelow(item, names[1:], value)
				if !ok {
					return nil, false
				}
				item = document.MergePatch(item.Clone(), inner)
			}
			list.Append(item)
		}
		return list, true
	}
	inner, ok := patchBelow(n.Get(names[0]), names[1:], value)
	if !ok {
		return nil, false
	}
	patch := document.NewMap()
	patch.Set(names[0], inner)
	return patch, true
}

// First returns the first patch of an empty job: one pile and one criterion
// under the given ids, nothing filled in but the scheme.
func First(pile, criterion string) *document.Node {
	now := document.NewMap()
	now.Set("criteria", mapOf(criterion, mapOf("scheme", document.NewText("single factor"))))
	now.Set("piles", mapOf(pile, mapOf("criterion", document.NewText(criterion))))
	return now
}

// Empty returns the tree of a job without any thing in it.
func Empty(id string) *document.Node {
	root := document.NewMap()
	root.Set("format", document.NewText(Format))
	root.Set("schema", document.NewInt(Schema))
	root.Set("minReader", document.NewInt(MinReader))
	root.Set("job", document.NewText(id))
	root.Set("now", document.NewMap())
	return root
}

func mapOf(name string, value *document.Node) *document.Node {
	m := document.NewMap()
	m.Set(name, value)
	return m
}
