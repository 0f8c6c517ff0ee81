package document

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"math/rand"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/published"
)

// Input and output of RFC 8785, sections 3.2.2 and 3.2.3, from memory.
func TestCanonicalOfRFC8785(t *testing.T) {
	n := mustRead(t, `{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`)
	rfc := published.Source{Document: "RFC 8785", Mark: basis.Memory}
	published.CheckText(t, rfc.At("3.2.2"), "sample object", `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],`+
		`"string":"€$\u000f\nA'B\"\\\\\"/"}`, string(n.Canonical()))

	n = mustRead(t, `{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One",
"\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}`)
	var order []string
	for _, value := range mustRead(t, string(n.Canonical())).Members() {
		order = append(order, value.Text())
	}
	published.CheckText(t, rfc.At("3.2.3"), "order of names", "Carriage Return, One, Control, Latin Small Letter O With Diaeresis, Euro Sign, "+
		"Emoji: Grinning Face, Hebrew Letter Dalet With Dagesh", strings.Join(order, ", "))
}

// Samples of RFC 8785, appendix B, as quoted by others, but for NaN and Infinity,
// which JSON has not. Each was compared with what Node 20 prints for the same
// bits, since the RFC takes its numbers from ECMAScript.
func TestNumbersOfRFC8785(t *testing.T) {
	for _, c := range []struct {
		bits uint64
		want string
	}{
		{0x0000000000000000, "0"},
		{0x8000000000000000, "0"},
		{0x0000000000000001, "5e-324"},
		{0x8000000000000001, "-5e-324"},
		{0x7fefffffffffffff, "1.7976931348623157e+308"},
		{0xffefffffffffffff, "-1.7976931348623157e+308"},
		{0x4340000000000000, "9007199254740992"},
		{0xc340000000000000, "-9007199254740992"},
		{0x4430000000000000, "295147905179352830000"},
		{0x44b52d02c7e14af5, "9.999999999999997e+22"},
		{0x44b52d02c7e14af6, "1e+23"},
		{0x44b52d02c7e14af7, "1.0000000000000001e+23"},
		{0x444b1ae4d6e2ef4e, "999999999999999700000"},
		{0x444b1ae4d6e2ef4f, "999999999999999900000"},
		{0x444b1ae4d6e2ef50, "1e+21"},
		{0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
		{0x3eb0c6f7a0b5ed8d, "0.000001"},
		{0x41b3de4355555553, "333333333.3333332"},
		{0x41b3de4355555554, "333333333.33333325"},
		{0x41b3de4355555555, "333333333.3333333"},
		{0x41b3de4355555556, "333333333.3333334"},
		{0x41b3de4355555557, "333333333.33333343"},
		{0xbecbf647612f3696, "-0.0000033333333333333333"},
		{0x43143ff3c1cb0959, "1424953923781206.2"},
	} {
		f := math.Float64frombits(c.bits)
		for _, raw := range []string{strconv.FormatFloat(f, 'e', 20, 64), strconv.FormatFloat(f, 'f', -1, 64)} {
			bits := fmt.Sprintf("%016x", c.bits)
			published.CheckText(t, published.Source{Document: "RFC 8785", Place: "appendix B", Mark: basis.SecondHand}, bits, c.want, string(NewNumber(raw).Canonical()))
		}
	}
}

func TestWholeNumbersKeepTheirDigits(t *testing.T) {
	for raw, want := range map[string]string{
		"9007199254740991": "9007199254740991", "-9007199254740991": "-9007199254740991", "-0": "0", "0": "0", "-0.0": "0",
		"9007199254740993": "9007199254740992", // the nearest double
		"1e400":            "1e400",            // no double
		"1e-400":           "0",
	} {
		assert.Equal(t, want, string(NewNumber(raw).Canonical()), raw)
	}
}

func TestNamesAreSortedAsUTF16(t *testing.T) {
	units := func(s string) []uint16 { return utf16.Encode([]rune(s)) }
	rnd := rand.New(rand.NewSource(4))
	letters := []rune("az\u007f\u0080\u07ff\u0800\ud7ff\ue000\uf900\uffff\U00010000\U0010ffff")
	word := func() string {
		runes := make([]rune, rnd.Intn(4))
		for i := range runes {
			runes[i] = letters[rnd.Intn(len(letters))]
		}
		return string(runes)
	}
	signs := map[int]int{}
	for range 20000 {
		a, b := word(), word()
		want := slices.Compare(units(a), units(b))
		got := min(max(compareUTF16(a, b), -1), 1)
		require.Equal(t, want, got, "%q %q", a, b)
		signs[got]++
	}
	require.Len(t, signs, 3)
}

// Examples of SHA-256 published by NIST with FIPS 180 (one block, two blocks of
// 448 bits, a million times "a") and the digest of the empty message, from
// memory.
func TestSHA256OfNIST(t *testing.T) {
	for message, want := range map[string]string{
		"":    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
		"abc": "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
		"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq": "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
		strings.Repeat("a", 1000000):                               "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
	} {
		sum := sha256.Sum256([]byte(message))
		name := message
		if len(name) > 60 {
			name = "a million times a"
		}
		published.CheckText(t, published.Source{Document: "NIST, examples of FIPS 180", Place: "SHA-256", Mark: basis.Memory}, strconv.Quote(name), want, hex.EncodeToString(sum[:]))
	}
}

// The canonical bytes are hashed and nothing else, so a tree whose canonical
// form is known has the digest of those bytes.
func TestDigest(t *testing.T) {
	sum := sha256.Sum256([]byte(`{"a":[1,"x"],"b":null}`))
	assert.Equal(t, hex.EncodeToString(sum[:]), Digest(mustRead(t, ` { "b" : null , "a" : [ 1.0 , "\u0078" ] } `)))

	// Larger than one piece handed to the hash.
	big := NewMap()
	for i := range 5000 {
		big.Set("n"+strconv.Itoa(i), NewList(NewInt(i), NewText("reading"), NewMap()))
	}
	sum = sha256.Sum256(big.Canonical())
	assert.Equal(t, hex.EncodeToString(sum[:]), Digest(big))
	assert.NotEqual(t, Digest(big), Digest(big.Get("n1")))
}
