package job

import (
	"strings"

	"gaugewright/calc/quantity"
)

// ColumnRule says which column may stand in the lines of a record or a
// certificate.
type ColumnRule struct {
	Name string
	Dim  quantity.Dimension
	Flag bool // "y" or "n" instead of a number
	// Whole says that the column holds whole seconds; its unit is "s".
	Whole bool
	// Named says that the column must be declared with its name; others may be
	// declared by their unit alone.
	Named  bool
	Signed bool    // may be below zero
	Max    float64 // of the value without its sign, in the coherent unit
}

// Column is a declared column.
type Column struct {
	ColumnRule
	Unit quantity.Unit
	most uint64 // greatest whole part in Unit
}

// flagUnit stands in a declaration where a column holds "y" or "n".
const flagUnit = "yn"

// NotRead stands in a line for a column that was not read. The first column is
// always there.
const NotRead = "-"

// The columns of what is measured. Time is in whole seconds since the part
// began.
var (
	atColumn      = ColumnRule{Name: "at", Dim: quantity.Times, Whole: true, Max: 999999999}
	enteredColumn = ColumnRule{Name: "entered", Dim: quantity.Times, Whole: true, Named: true, Max: 999999999}
	readingColumn = ColumnRule{Name: "reading", Dim: quantity.Pressures, Max: mostOil}
)

func lengthColumn(name string, named, signed bool, max float64) ColumnRule {
	return ColumnRule{Name: name, Dim: quantity.Lengths, Named: named, Signed: signed, Max: max}
}

var certificateColumns = []ColumnRule{
	readingColumn,
	{Name: "load", Dim: quantity.Forces, Max: mostForce},
	{Name: "reference", Dim: quantity.Pressures, Max: mostOil},
}

// ParseColumns reads a declaration of columns such as "s m MPa" or
// "s m MPa peak=MPa still=yn": each is a unit, or a name, "=" and a unit. A unit
// alone means the first column of its dimension in the list that has not been
// declared yet. The first column declared is the first of the list, and there
// are at least two. ok is false where the text is no such declaration.
func ParseColumns(text string, rules []ColumnRule) (columns []Column, ok bool) {
	var taken uint64
	for i, word := range strings.Split(text, " ") {
		name, symbol, named := strings.Cut(word, "=")
		if !named {
			symbol = word
		}
		u, known := quantity.Find(symbol)
		k := 0
		for ; k < len(rules); k++ {
			r := rules[k]
			if taken&(1<<k) != 0 || named && r.Name != name || !named && (r.Named || r.Flag) {
				continue
			}
			if r.Flag && symbol == flagUnit || !r.Flag && known && symbol != "" && u.Dim == r.Dim && (!r.Whole || symbol == "s") {
				break
			}
		}
		if k == len(rules) || i == 0 && k != 0 {
			return nil, false
		}
		taken |= 1 << k
		c := Column{ColumnRule: rules[k]}
		if !c.Flag {
			c.Unit, c.most = u, uint64(u.From(c.Max))
		}
		columns = append(columns, c)
	}
	if len(columns) < 2 {
		return nil, false
	}
	return columns, true
}

// columnsAllowed writes what may be declared, for a complaint.
func columnsAllowed(rules []ColumnRule) string {
	text := ""
	for i, r := range rules {
		unit := flagUnit
		if !r.Flag {
			unit = quantity.Units(r.Dim)[0].Symbol
			if r.Whole {
				unit = "s"
			} else if unit == "" {
				unit = "%"
			}
		}
		if r.Named || r.Flag {
			unit = r.Name + "=" + unit
		}
		switch i {
		case 0:
		case 1:
			text += ", then of: "
		default:
			text += ", "
		}
		text += unit
	}
	return text + "; or other units of the same kinds"
}

func columnsExample(rules []ColumnRule) string {
	var list []string
	for _, r := range rules {
		switch {
		case r.Named || r.Flag || len(list) == 3:
		case r.Whole:
			list = append(list, "s")
		default:
			list = append(list, quantity.Units(r.Dim)[0].Symbol)
		}
	}
	return strings.Join(list, " ")
}

// lineFits says whether a line holds a number for every column: digits with an
// optional point and digits, a minus where the column allows one, "-" where
// nothing was read, parted by one space. It allocates nothing: files hold
// hundreds of thousands of lines.
func lineFits(text string, columns []Column) bool {
	i := 0
	for k := range columns {
		c := &columns[k]
		if k > 0 {
			if i == len(text) || text[i] != ' ' {
				return false
			}
			i++
			if i < len(text) && text[i] == '-' && (i+1 == len(text) || text[i+1] == ' ') {
				i++ // not read
				continue
			}
		}
		if i == len(text) {
			return false
		}
		if c.Flag {
			if text[i] != 'y' && text[i] != 'n' {
				return false
			}
			i++
			continue
		}
		if text[i] == '-' {
			if !c.Signed {
				return false
			}
			i++
		}
		start, whole := i, uint64(0)
		for i < len(text) && digit(text[i]) {
			whole = whole*10 + uint64(text[i]-'0')
			i++
		}
		count := i - start
		if count == 0 || count > quantity.MaxDigits || whole > c.most {
			return false
		}
		if i < len(text) && text[i] == '.' && !c.Whole {
			i++
			start = i
			for i < len(text) && digit(text[i]) {
				i++
			}
			if i == start || count+i-start > quantity.MaxDigits {
				return false
			}
		}
	}
	return i == len(text)
}

// linesAllowed writes what a line under these columns holds, for a complaint.
func linesAllowed(columns []Column) string {
	text := "one space between: "
	for i, c := range columns {
		if i > 0 {
			text += ", "
		}
		text += c.Name
		switch {
		case c.Flag:
			text += " (y, n or -)"
		case c.Whole:
			text += " in whole s"
		default:
			text += " in " + c.Unit.Symbol
		}
	}
	return text
}

func lineExample(columns []Column) string {
	text := ""
	for i, c := range columns {
		if i > 0 {
			text += " "
		}
		switch {
		case c.Flag:
			text += "y"
		case c.Whole:
			text += "75"
		default:
			text += "2.50"
		}
	}
	return text
}
