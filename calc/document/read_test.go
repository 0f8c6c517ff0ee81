package document

import (
	"encoding/json"
	"math/rand"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// small has every kind of value, escapes and characters of every length.
const small = `{ "a": [1, -2.5e+3, true, false, null, "t\u00e9xt \ud83d\ude00 é€😀 \n\/"],
  "b/c": { "d~": {}, "e": [], "": "" } }`

func TestReadSmall(t *testing.T) {
	n := mustRead(t, small)
	assert.True(t, says(n, independent(t, []byte(small))))
	assert.Equal(t, "téxt 😀 é€😀 \n/", n.At("/a/5").Text())
	assert.Equal(t, "-2.5e+3", n.At("/a/1").Raw())
	assert.Equal(t, Map, n.At("/b~1c/d~0").Kind())

	data := []byte(small)
	n, _ = Read(data)
	for i := range data {
		data[i] = 'x'
	}
	assert.True(t, says(n, independent(t, []byte(small))), "the tree does not refer to the bytes it was read from")
}

func TestReadOwned(t *testing.T) {
	n, got := ReadOwned([]byte(small))
	require.True(t, got.None())
	assert.True(t, n.Equal(mustRead(t, small)))
	_, got = ReadOwned(nil)
	assert.Equal(t, CodeEmpty, got.List[0].Code)
}

func TestByteOrderMarkAndWhiteSpace(t *testing.T) {
	assert.Equal(t, `{"a":1}`, mustRead(t, "\uFEFF\r\n\t {\"a\"\t:\r1\n}\n\n").Compact())
	got := refused(t, "\uFEFF\uFEFF{}")
	assert.Equal(t, CodeKind, got.List[0].Code)
}

// refused reads a text that is wrong and holds the complaints to their promises.
func refused(t testing.TB, text string) Complaints {
	t.Helper()
	n, got := ReadText(text)
	require.Nil(t, n)
	require.NotEmpty(t, got.List)
	wellFormed(t, got)
	return got
}

func wellFormed(t testing.TB, got Complaints) {
	t.Helper()
	require.LessOrEqual(t, len(got.List), MaxComplaints)
	require.GreaterOrEqual(t, got.Count, len(got.List))
	if got.Count > len(got.List) {
		require.Len(t, got.List, MaxComplaints)
	}
	line := 1
	for _, c := range got.List {
		require.NotEmpty(t, c.Code)
		require.GreaterOrEqual(t, c.Line, line)
		line = c.Line
		require.LessOrEqual(t, utf8.RuneCountInString(c.Found), 40)
		for _, s := range []string{c.Path, c.Found, c.Allowed, c.Example} {
			require.True(t, utf8.ValidString(s))
			for _, r := range s {
				require.True(t, strconv.IsPrint(r), "%q", s)
			}
		}
		if c.Path != "" {
			require.Equal(t, byte('/'), c.Path[0])
		}
	}
}

func TestComplaints(t *testing.T) {
	const starts = `{ [ " - 0-9 true false null`
	const number = "-?(0|[1-9][0-9]*)(.[0-9]+)?([eE][+-]?[0-9]+)?"
	const escapes = `\" \\ \/ \b \f \n \r \t \u0000-\uFFFF`
	const pair, pairExample = `\uD800-\uDBFF \uDC00-\uDFFF`, `\uD83D\uDE00`
	const example = `{ "a": 1 }`
	cases := []struct {
		name, text string
		want       []Complaint
	}{
		{"empty", "", []Complaint{{CodeEmpty, "", 1, "", "{", example}}},
		{"spaces", " \n \r\n ", []Complaint{{CodeEmpty, "", 3, "", "{", example}}},
		{"only a byte order mark", "\uFEFF", []Complaint{{CodeEmpty, "", 1, "", "{", example}}},
		{"a PDF", "%PDF-1.7\n%âãÏÓ\n1 0 obj", []Complaint{{CodeKind, "", 1, "%PDF-1.7", "{", example}}},
		{"a zip", "PK\x03\x04\x14\x00", []Complaint{{CodeKind, "", 1, "PK\uFFFD\uFFFD\uFFFD\uFFFD", "{", example}}},
		{"gzip", "\x1f\x8b\x08", []Complaint{{CodeKind, "", 1, "U+001F", "{", example}}},
		{"a page", "<!doctype html>\n", []Complaint{{CodeKind, "", 1, "<!doctype html>", "{", example}}},
		{"a letter", "\nthe readings of today", []Complaint{{CodeKind, "", 2, "the readings of today", "{", example}}},
		{"UTF-16 with mark", "\xff\xfe{\x00}\x00", []Complaint{{CodeUTF8, "", 1, "UTF-16", "UTF-8", ""}}},
		{"UTF-16 without", "{\x00}\x00", []Complaint{{CodeUTF8, "", 1, "UTF-16", "UTF-8", ""}}},

		{"cut in a map", "{\"a\":\n[1,{\"b\":2", []Complaint{{CodeTruncated, "/a/1/b", 2, "{\"a\":\uFFFD[1,{\"b\":2", "}]}", ""}}},
		{"cut in a text", `{"a":"bc`, []Complaint{{CodeTruncated, "/a", 1, `{"a":"bc`, "}", ""}}},
		{"cut in a word", `[tru`, []Complaint{{CodeTruncated, "/0", 1, `[tru`, "]", ""}}},
		{"cut in an escape", `["\u00`, []Complaint{{CodeTruncated, "/0", 1, `["\u00`, "]", ""}}},
		{"cut before a name", `{"a":[{`, []Complaint{{CodeTruncated, "/a/0", 1, `{"a":[{`, "}]}", ""}}},
		{"cut, and a duplicate before", `{"a":1,"a":{"b":`, []Complaint{
			{CodeDuplicate, "/a", 1, "a", "1", ""}, {CodeTruncated, "/a/b", 1, `{"a":1,"a":{"b":`, "}}", ""}}},

		{"trailing", "{}\n}", []Complaint{{CodeTrailing, "", 2, "}", "", ""}}},
		{"trailing zero bytes", "{}\x00\x00", []Complaint{{CodeTrailing, "", 1, "U+0000", "", ""}}},
		{"two values", "{} {}", []Complaint{{CodeTrailing, "", 1, "{}", "", ""}}},

		{"no comma", "{\"a\":1\n\"b\":2}", []Complaint{{CodeSyntax, "/a", 2, `"b":2}`, ", }", ""}}},
		{"comma before end", `[1,]`, []Complaint{{CodeSyntax, "/1", 1, "]", starts, ""}}},
		{"no quotes", `{a:1}`, []Complaint{{CodeSyntax, "", 1, "a:1}", `"`, `"a": 1`}}},
		{"single quotes", `{"a":'x'}`, []Complaint{{CodeSyntax, "/a", 1, "'x'}", starts, ""}}},
		{"no colon", `{"a" 1}`, []Complaint{{CodeSyntax, "/a", 1, "1}", ":", `"a": 1`}}},
		{"a comment", "{\"a\":1, // depth\n}", []Complaint{{CodeSyntax, "", 1, "// depth", `"`, `"a": 1`}}},
		{"no-break space", "{\u00a0}", []Complaint{{CodeSyntax, "", 1, "U+00A0", `"`, `"a": 1`}}},
		{"wrong bracket", `{"a":[1}`, []Complaint{{CodeSyntax, "/a/0", 1, "}", ", ]", ""}}},
		{"words", `[True,None,nul]`, []Complaint{{CodeSyntax, "/0", 1, "True", "true", ""},
			{CodeSyntax, "/1", 1, "None", starts, ""}, {CodeSyntax, "/2", 1, "nul", starts, ""}}},

		{"numbers", "[01.5,+1,\nNaN,.5,1.,1e,-,0x1F,-Infinity,1_000,1.2.3,Infinity,2]", []Complaint{
			{CodeNumber, "/0", 1, "01.5", number, "-1.5"}, {CodeNumber, "/1", 1, "+1", number, "-1.5"},
			{CodeNumber, "/2", 2, "NaN", starts, ""}, {CodeNumber, "/3", 2, ".5", number, "-1.5"},
			{CodeNumber, "/4", 2, "1.", number, "-1.5"}, {CodeNumber, "/5", 2, "1e", number, "-1.5"},
			{CodeNumber, "/6", 2, "-", number, "-1.5"}, {CodeNumber, "/7", 2, "0x1F", number, "-1.5"},
			{CodeNumber, "/8", 2, "-Infinity", number, "-1.5"}, {CodeNumber, "/9", 2, "1_000", number, "-1.5"},
			{CodeNumber, "/10", 2, "1.2.3", number, "-1.5"}, {CodeNumber, "/11", 2, "Infinity", starts, ""}}},

		{"duplicate", "{\"a\":1,\n\"b\":{\"c\":1,\"c\":2},\n\"a\":2}", []Complaint{
			{CodeDuplicate, "/b/c", 2, "c", "1", ""}, {CodeDuplicate, "/a", 3, "a", "1", ""}}},
		{"duplicate by escape", `{"a":1,"\u0061":2}`, []Complaint{{CodeDuplicate, "/a", 1, "a", "1", ""}}},
		{"three times", `{"a":1,"A":2,"A":3}`, []Complaint{{CodeCase, "/A", 1, "A", "a", ""}, {CodeDuplicate, "/A", 1, "A", "1", ""}}},
		{"case twins", "{\"Depth\":1,\r\n\"depth\":2}", []Complaint{{CodeCase, "/depth", 2, "depth", "Depth", ""}}},
		{"Kelvin sign", "{\"k\":1,\"\u212a\":2}", []Complaint{{CodeCase, "/\u212a", 1, "\u212a", "k", ""}}},
		{"long s", "{\"\u017fet\":1,\"set\":2}", []Complaint{{CodeCase, "/set", 1, "set", "\u017fet", ""}}},
		{"sigma", `{"σ":1,"ς":2}`, []Complaint{{CodeCase, "/ς", 1, "ς", "σ", ""}}},

		{"Latin-1", "{\"a\":\"K\xf6ln \xfc\",\"b\":[\"\xff\"]}", []Complaint{
			{CodeUTF8, "/a", 1, "0xF6", "UTF-8", ""}, {CodeUTF8, "/b/0", 1, "0xFF", "UTF-8", ""}}},
		{"bad name", "{\"a\":{\"\xff\":1}}", []Complaint{{CodeUTF8, "/a", 1, "0xFF", "UTF-8", ""}}},
		{"surrogate as UTF-8", "[\"\xed\xa0\x80\"]", []Complaint{{CodeUTF8, "/0", 1, "0xED", "UTF-8", ""}}},
		{"bad byte between", "[1,\xff]", []Complaint{{CodeSyntax, "/1", 1, "0xFF", starts, ""}}},
		{"lone surrogates", `["\ud800","\udc00","x\ud83dy","\ud800\u0041","\ud800\ud800","\uDE00\uD83D"]`, []Complaint{
			{CodeSurrogate, "/0", 1, `\ud800`, pair, pairExample}, {CodeSurrogate, "/1", 1, `\udc00`, pair, pairExample},
			{CodeSurrogate, "/2", 1, `\ud83d`, pair, pairExample}, {CodeSurrogate, "/3", 1, `\ud800`, pair, pairExample},
			{CodeSurrogate, "/4", 1, `\ud800`, pair, pairExample}, {CodeSurrogate, "/5", 1, `\uDE00`, pair, pairExample}}},
		{"control characters", "[\"a\tb\tc\",\"\x01\"]", []Complaint{
			{CodeControl, "/0", 1, "U+0009", `\t`, ""}, {CodeControl, "/1", 1, "U+0001", `\u0001`, ""}}},
		{"escapes", `["C:\temp\docs","\é","\u12","\uXYZW"]`, []Complaint{
			{CodeEscape, "/0", 1, `\d`, escapes, `\\`}, {CodeEscape, "/1", 1, `\é`, escapes, `\\`},
			{CodeEscape, "/2", 1, `\u12`, escapes, `\\`}, {CodeEscape, "/3", 1, `\u`, escapes, `\\`}}},
	}
	for _, c := range cases {
		got := refused(t, c.text)
		assert.Equal(t, c.want, got.List, c.name)
		assert.Equal(t, len(c.want), got.Count, c.name)
	}
}

func TestDepthLimit(t *testing.T) {
	deep := func(n int) string { return strings.Repeat(`[`, n) + strings.Repeat(`]`, n) }
	assert.Equal(t, MaxDepth, mustRead(t, deep(MaxDepth)).Depth())
	want := []Complaint{{CodeDepth, strings.Repeat("/0", MaxDepth), 1, "33", "32", ""}}
	for _, n := range []int{33, 40, 1_000_000} {
		assert.Equal(t, want, refused(t, deep(n)).List)
	}
	maps := strings.Repeat(`{"a":`, 40) + "1" + strings.Repeat(`}`, 40)
	assert.Equal(t, strings.Repeat("/a", MaxDepth), refused(t, maps).List[0].Path)
}

func TestSizeLimit(t *testing.T) {
	text := `"` + strings.Repeat("x", MaxSize-2) + `"`
	assert.Len(t, mustRead(t, text).Text(), MaxSize-2)
	want := Complaints{Count: 1, List: []Complaint{{Code: CodeSize, Line: 1, Found: "33554433", Allowed: "33554432"}}}
	assert.Equal(t, want, refused(t, text+" "))
	n, got := Read(make([]byte, 34<<20))
	assert.Nil(t, n)
	assert.Equal(t, "35651584", got.List[0].Found)
}

// A text cut anywhere gives no tree, and the last complaint says it was cut.
func TestTruncatedAnywhere(t *testing.T) {
	for end := range len(small) {
		got := refused(t, small[:end])
		last := got.List[len(got.List)-1]
		switch {
		case end == 0:
			assert.Equal(t, CodeEmpty, last.Code)
		case utf8.ValidString(small[:end]):
			assert.Equal(t, CodeTruncated, last.Code, small[:end])
			assert.Equal(t, 1, got.Count, small[:end])
		default: // cut inside a character
			assert.Equal(t, CodeTruncated, last.Code, small[:end])
		}
	}
}

func TestFirstHundredByPosition(t *testing.T) {
	// Found last, placed first: the duplicate of the outer map is known only
	// when the map ends.
	var b strings.Builder
	b.WriteString(`{"a":0,"a":0,"b":[`)
	for i := range 150 {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n" + `{"x":1,"x":2}`)
	}
	b.WriteString("],\n\"A\":0}")
	got := refused(t, b.String())
	assert.Equal(t, 152, got.Count)
	require.Len(t, got.List, MaxComplaints)
	assert.Equal(t, Complaint{CodeDuplicate, "/a", 1, "a", "1", ""}, got.List[0])
	for i, c := range got.List[1:] {
		assert.Equal(t, Complaint{CodeDuplicate, "/b/" + strconv.Itoa(i) + "/x", i + 2, "x", "1", ""}, c)
	}
}

// Large maps are judged by sorting; the judge here is strings.EqualFold on
// every pair.
func TestNamesOfMapsOfAnySize(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	letters := []rune("abkKsSxX1\u212a\u017fßẞéÉσςΣǅǆ")
	for _, size := range []int{2, 5, 16, 17, 18, 40, 300} {
		for range 60 {
			names := make([]string, size)
			for i := range names {
				name := make([]rune, 2+rnd.Intn(2)+size/40)
				for j := range name {
					name[j] = letters[rnd.Intn(len(letters))]
				}
				names[i] = string(name)
			}
			var want []Complaint
			for i, name := range names {
				first := slices.IndexFunc(names[:i], func(s string) bool { return strings.EqualFold(s, name) })
				switch {
				case slices.Contains(names[:i], name):
					want = append(want, Complaint{CodeDuplicate, "/" + name, 1, name, "1", ""})
				case first >= 0:
					want = append(want, Complaint{CodeCase, "/" + name, 1, name, names[first], ""})
				}
			}
			n, got := ReadText(`{"` + strings.Join(names, `":1,"`) + `":1}`)
			require.Equal(t, len(want), got.Count, names)
			require.Equal(t, len(want) == 0, n != nil)
			require.Len(t, got.List, min(len(want), MaxComplaints))
			for i, c := range got.List {
				require.Equal(t, want[i], c, names)
			}
		}
	}
}

func TestTenThousandMembers(t *testing.T) {
	var b strings.Builder
	b.WriteString("{\n")
	for i := range 10_000 {
		b.WriteString(`"name` + strconv.Itoa(i*7919%10_000) + `": ` + strconv.Itoa(i) + ",\n")
	}
	n := mustRead(t, b.String()+`"last":1}`)
	assert.Equal(t, 10_001, n.Len())
	assert.Equal(t, "1", n.Get("last").Raw())
	assert.Equal(t, "1", n.Get("name7919").Raw())
	got := refused(t, b.String()+`"NAME77":1}`)
	assert.Equal(t, []Complaint{{CodeCase, "/NAME77", 10_002, "NAME77", "name77", ""}}, got.List)
}

// A long name or many complaints inside it must not make a long answer.
func TestComplaintsStaySmall(t *testing.T) {
	name := strings.Repeat("é", 1<<20)
	got := refused(t, `{"`+name+`":[`+strings.Repeat("01,", 1000)+`01]}`)
	assert.Equal(t, 1001, got.Count)
	for i, c := range got.List {
		assert.Equal(t, "/"+strings.Repeat("é", 79)+"…/"+strconv.Itoa(i), c.Path)
	}
	got = refused(t, `[0`+strings.Repeat("1", 1000)+`]`)
	assert.Equal(t, "0"+strings.Repeat("1", 38)+"…", got.List[0].Found)
	got = refused(t, `["a\`+"\x1b"+`b"]`)
	assert.Equal(t, `\`+"\uFFFD", got.List[0].Found)
}

func TestLinesOfAllLineEnds(t *testing.T) {
	for ends, want := range map[string]int{"\n\n": 3, "\r\n\r\n": 3, "\r\r": 3, "\n\r\n\r": 4, "": 1} {
		assert.Equal(t, want, refused(t, "["+ends+"01]").List[0].Line, "%q", ends)
		assert.Equal(t, want, refused(t, ends+"[01]").List[0].Line, "%q", ends)
	}
}

// ownRules are complaints about texts that RFC 8259 lets pass.
var ownRules = []string{CodeDuplicate, CodeCase, CodeUTF8, CodeSurrogate, CodeDepth}

// checkAgainstIndependent compares the outcome with encoding/json, and writes
// and reads again what was read.
func checkAgainstIndependent(t testing.TB, data []byte) {
	t.Helper()
	n, got := Read(data)
	plainData := []byte(strings.TrimPrefix(string(data), byteMark))
	valid := json.Valid(plainData)
	if n == nil {
		require.NotZero(t, got.Count)
		wellFormed(t, got)
		if valid {
			for _, c := range got.List {
				require.Contains(t, ownRules, c.Code, "%q", data)
			}
		}
		return
	}
	require.Zero(t, got.Count)
	require.True(t, valid, "%q", data)
	require.True(t, says(n, independent(t, plainData)), "%q", data)
	stable := n.Stable()
	back, complaints := Read(stable)
	require.Empty(t, complaints.List, "%q", stable)
	require.True(t, back.Equal(n), "%q", stable)
	require.Equal(t, string(stable), string(back.Stable()))
	require.True(t, Check(n).None())
}

func TestDamagedTextsAgreeWithIndependentReader(t *testing.T) {
	rnd := rand.New(rand.NewSource(8))
	pieces := []string{"{", "}", "[", "]", ",", ":", `"`, `\`, "0", "-", ".", "e", "\n", "\x00", "\xff", "\xc3", `\u`, `\ud800`, "true", "k", "K", " "}
	read := 0
	for range 20_000 {
		data := randomNode(rnd, 3, false).Stable()
		for range 1 + rnd.Intn(2) {
			at := rnd.Intn(len(data) + 1)
			end := min(len(data), at+rnd.Intn(3))
			data = slices.Concat(data[:at], []byte(pieces[rnd.Intn(len(pieces))]), data[end:])
		}
		checkAgainstIndependent(t, data)
		if n, _ := Read(data); n != nil {
			read++
		}
	}
	require.Greater(t, read, 1000)
}

func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		small, "", " ", "\uFEFF{}", "%PDF-1.7", "PK\x03\x04", `{"a":1,"a":2}`, `{"k":1,"K":2}`, `["\ud800"]`, "[\"\xff\"]", `{} x`, `[01,+1,NaN]`,
		`{"lines":["75 0.50 2.0","76 1.00 2.5"],"events":[{"s":0,"is":"set-up"}]}`, strings.Repeat("[", 33), `[1.5e-7,1E400,-0]`, "\xff\xfe{\x00",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) { checkAgainstIndependent(t, data) })
}
