package history

import "gaugewright/calc/document"

// Sign puts a signature into the file under an id of its own, with the number
// of entries of every sitting that stood in the file when it was made. A
// signature is never changed; it is withdrawn by striking it out.
func Sign(root *document.Node, id string, signature *document.Node) {
	seen := document.NewMap()
	for name, s := range root.Get("sittings").Members() {
		seen.Set(name, document.NewInt(s.Get("entries").Len()))
	}
	signature.Set("seen", seen)
	all := root.Get("signatures")
	if all.Kind() != document.Map {
		all = document.NewMap()
		root.Set("signatures", all)
	}
	all.Set(id, signature)
}

// Begin makes sure that a sitting stands in the file, for what is recorded in
// it.
func Begin(root *document.Node, s Sitting) { sitting(root, s) }
