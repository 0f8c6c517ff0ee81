package published

import (
	"bufio"
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"
	"text/tabwriter"
)

// FileVariable names the environment variable with the file to which checks are
// added, one a line. Without it nothing is written.
const FileVariable = "PUBLISHED_FILE"

// Line is one comparison, as the report needs it.
type Line struct {
	Document, Place, Mark string
	Worked                bool
	What, Want, Got       string
	Number                bool    // what follows holds for numbers
	Difference, Relative  float64 // got less want; its size over that of want
	LastDigits            float64 // size of the difference in units of the last printed digit
	Tolerance             float64
	Why                   string // the tolerance is looser than the printed digits
	OK                    bool
}

func (s Source) line(what, want string, ok bool) Line {
	l := Line{Document: s.Document, Place: s.Place, Worked: s.worked, What: what, Want: want, OK: ok}
	if !s.worked {
		l.Mark = string(rune(s.Mark))
	}
	return l
}

// record adds the line to the file of the report. Tests of several packages do
// so at the same time: each line is one write to the end.
func (l Line) record(t testing.TB) {
	t.Helper()
	name := os.Getenv(FileVariable)
	if name == "" {
		return
	}
	text, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	file, err := os.OpenFile(name, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if _, err := file.Write(append(text, '\n')); err != nil {
		t.Fatal(err)
	}
}

// ReadLines reads what the checks wrote, each comparison once, in the order of
// the report.
func ReadLines(r io.Reader) (list []Line, err error) {
	in := bufio.NewScanner(r)
	for in.Scan() {
		var l Line
		if err := json.Unmarshal(in.Bytes(), &l); err != nil {
			return nil, err
		}
		list = append(list, l)
	}
	slices.SortFunc(list, Line.compare)
	return slices.Compact(list), in.Err()
}

func (l Line) compare(m Line) int {
	return cmp.Or(inOrder(l.Document, m.Document), inOrder(l.Place, m.Place), inOrder(l.What, m.What), cmp.Compare(l.Want, m.Want), cmp.Compare(l.Got, m.Got))
}

// inOrder compares texts, whole numbers in them by their value.
func inOrder(a, b string) int {
	for a != "" && b != "" {
		m, n := digits(a), digits(b)
		if m > 0 && n > 0 {
			x, y := strings.TrimLeft(a[:m], "0"), strings.TrimLeft(b[:n], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y), cmp.Compare(m, n)); c != 0 {
				return c
			}
			a, b = a[m:], b[n:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

// digits is how many digits a text begins with.
func digits(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }

// Print writes the report: every check under its document, what was worked out
// by ourselves apart from it, and a count a source.
func Print(w io.Writer, list []Line) {
	var theirs, ours []Line
	for _, l := range list {
		if l.Worked {
			ours = append(ours, l)
		} else {
			theirs = append(theirs, l)
		}
	}
	fmt.Fprint(w, "PUBLISHED VALUES\n\n")
	printGroups(w, theirs)
	fmt.Fprint(w, "OWN DERIVATIONS, worked out by hand or by another program, apart from the code\n\n")
	printGroups(w, ours)
	fmt.Fprint(w, "COUNT AND WORST DIFFERENCE OF EACH SOURCE\n\n")
	printSums(w, "published", theirs)
	printSums(w, "own derivations", ours)
	fmt.Fprint(w, `Marks: S seen in a published copy, s seen only as quoted by others, M recalled from memory, P common practice
without a source, O our own choice. Tolerance: half a unit of the last printed digit unless another is shown;
"looser" says why it is more than that. Relative: difference over the expected value. Last digits: difference in
units of the last printed digit, at most 0.5 where the printed digits are met. Text is compared sign for sign.
`)
}

// printGroups writes a table for each document.
func printGroups(w io.Writer, list []Line) {
	for _, group := range byDocument(list) {
		fmt.Fprintln(w, group[0].Document)
		table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
		fmt.Fprint(table, "  place\twhat\texpected\tgot\tdifference\trelative\ttolerance\tmark\t\n")
		for _, l := range group {
			difference, relative, tolerance := "same", "", "exact"
			switch {
			case l.Number:
				difference, relative, tolerance = fmt.Sprintf("%.1e", l.Difference), fmt.Sprintf("%.1e", l.Relative), fmt.Sprintf("%.1e", l.Tolerance)
				if l.Tolerance == 0 {
					tolerance = "exact"
				}
				if l.Difference == 0 {
					difference, relative = "0", "0"
				}
			case !l.OK:
				difference = "differs"
			}
			verdict := "ok"
			if !l.OK {
				verdict = "NOT OK"
			}
			if l.Why != "" {
				verdict += ", looser: " + l.Why
			}
			fmt.Fprintf(table, "  %s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\n", l.Place, l.What, l.Want, l.Got, difference, relative, tolerance, l.Mark, verdict)
		}
		table.Flush()
		fmt.Fprintln(w)
	}
}

func byDocument(list []Line) (groups [][]Line) {
	for i, l := range list {
		if i == 0 || l.Document != list[i-1].Document {
			groups = append(groups, nil)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], l)
	}
	return groups
}

// printSums writes how many values each source has, by mark, and how far off
// the worst of them is.
func printSums(w io.Writer, title string, list []Line) {
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintf(table, "%s\tvalues\tnot ok\tworst relative\tworst in last digits\tlooser\tmarks\n", title)
	failed := 0
	for _, group := range byDocument(list) {
		bad, looser, worst, last, numbers := 0, 0, 0.0, 0.0, 0
		marks := map[string]int{}
		for _, l := range group {
			marks[l.Mark]++
			if !l.OK {
				bad++
			}
			if l.Why != "" {
				looser++
			}
			if l.Number {
				numbers++
				worst, last = max(worst, l.Relative), max(last, l.LastDigits)
			}
		}
		failed += bad
		relative, digit := "text", ""
		if numbers > 0 {
			relative, digit = fmt.Sprintf("%.1e", worst), fmt.Sprintf("%.2g", last)
		}
		fmt.Fprintf(table, "%s\t%d\t%d\t%s\t%s\t%d\t%s\n", group[0].Document, len(group), bad, relative, digit, looser, countMarks(marks))
	}
	fmt.Fprintf(table, "all\t%d\t%d\t\t\t\t\n", len(list), failed)
	table.Flush()
	fmt.Fprintln(w)
}

func countMarks(marks map[string]int) string {
	var parts []string
	for _, mark := range []string{"S", "s", "M", "P", "O"} {
		if n := marks[mark]; n > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", mark, n))
		}
	}
	return strings.Join(parts, ", ")
}
