package document

import "crypto/sha256"

// Digest returns the SHA-256 of the canonical form, as 64 hexadecimal digits.
// It is a check mark for people, not a signature. Trees that are Equal have
// the same digest; so have trees that differ only in the writing of numbers,
// as 1 and 1.0.
func Digest(n *Node) string {
	hash := sha256.New()
	c := canonical{flush: func(p []byte) { hash.Write(p) }}
	c.value(n)
	hash.Write(c.out)
	const digits = "0123456789abcdef" // encoding/hex would bring in fmt
	sum := hash.Sum(nil)
	text := make([]byte, 0, 2*len(sum))
	for _, b := range sum {
		text = append(text, digits[b>>4], digits[b&15])
	}
	return string(text)
}
