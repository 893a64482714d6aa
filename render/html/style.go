package html

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"fmt"
	"html/template"
	"strings"

	"seamwarden/templates"
)

// style gives the page's one style sheet and the content security policy that
// lets it, and nothing else, in. The policy is that of Content Security Policy
// Level 3: the SHA-256 of the element's text, in base64.
func (p *page) style() (sheet template.CSS, policy string, err error) {
	file, err := templates.HTML.ReadFile("html/style.css")
	if err != nil {
		return "", "", fmt.Errorf("the style sheet cannot be read: %w", err)
	}
	// A browser takes the hash after it has put LF for CR LF. Some validators
	// take it without the white space at the ends, so there is none.
	text := bytes.ReplaceAll(file, []byte("\r\n"), []byte("\n"))
	text = append(text, p.colours.css()+p.pageFoot()...)
	text = bytes.TrimSpace(bytes.Map(allowed, text))
	if bytes.Contains(bytes.ToLower(text), []byte("</style")) {
		return "", "", errors.New("the style sheet holds the end of its own element")
	}
	sum := sha256.Sum256(text)
	policy = "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; img-src data:; base-uri 'none'; form-action 'none'"
	return template.CSS(text), policy, nil
}

// pageFoot names the booklet at the foot of each printed page, so that a loose
// sheet finds its way back.
func (p *page) pageFoot() string {
	words := p.doc.Title
	if p.doc.Edition != "" {
		words += " · " + p.doc.Labels.Edition + " " + p.doc.Edition
	}
	return "@page{@bottom-left{content:" + cssString(words) + "}}\n"
}

// cssString writes text as a CSS string. All but ASCII letters, digits and
// spaces are escaped, so that no text can end the string. The space after each
// escape ends it and is not shown (CSS Syntax Level 3, section 4.3.7).
func cssString(s string) string {
	var out strings.Builder
	out.WriteByte('"')
	for _, r := range s {
		switch {
		case r == ' ', r >= '0' && r <= '9', r >= 'A' && r <= 'Z', r >= 'a' && r <= 'z':
			out.WriteRune(r)
		default:
			fmt.Fprintf(&out, `\%x `, r)
		}
	}
	out.WriteByte('"')
	return out.String()
}
