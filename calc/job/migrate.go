package job

import "gaugewright/calc/document"

// migration brings the tree of a file from one schema to the next. It changes
// names and shapes, never a digit of what a person stated.
type migration struct {
	From   int // schema of the files that it takes
	Change func(root *document.Node)
}

// migrationTable lists the migrations, one for each schema that is no longer
// the present one, in order. Schema 1 is the first, so there is none yet. A file
// of every schema that was ever written stays in testdata/golden for ever, and a
// test opens each.
var migrationTable = []migration{}

// Migrate brings a file of an older schema to the present one, in place. It is
// to be called before [Check]; a file of the present or a newer schema, and one
// whose schema cannot be read, is left alone. It reports whether anything was
// changed.
func Migrate(root *document.Node) bool { return migrate(root, migrationTable) }

func migrate(root *document.Node, table []migration) bool {
	changed := false
	for _, m := range table {
		if v, ok := root.Get("schema").Int(); ok && v == m.From {
			m.Change(root)
			root.Set("schema", document.NewInt(m.From+1))
			changed = true
		}
	}
	return changed
}
