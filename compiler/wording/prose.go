package wording

import (
	"strings"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"

	"seamwarden/compiler/booklet"
	"seamwarden/compiler/model"
	"seamwarden/dsl/finding"
)

// Braces stand in the Markdown as one private sign each while it is parsed, so
// that nothing in them is taken for markup. Signs of that range in a text of the
// author's own are dropped.
const (
	firstSign = 0xE000
	lastSign  = 0xF8FF
)

// masked puts a sign in the place of every brace.
func masked(p *model.Prose) string {
	var b strings.Builder
	at := 0
	for i, br := range p.Braces {
		b.WriteString(withoutSigns(p.Text[at:br.Start]))
		if firstSign+i <= lastSign {
			b.WriteRune(rune(firstSign + i))
		}
		at = br.End
	}
	b.WriteString(withoutSigns(p.Text[at:]))
	return b.String()
}

func withoutSigns(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= firstSign && r <= lastSign {
			return -1
		}
		return r
	}, s)
}

// markdown is made when a text is worded, which a check does of few.
var markdown = sync.OnceValue(func() goldmark.Markdown { return goldmark.New() })

// prose turns a block of the author's Markdown into blocks, with the declared
// values in the places of the braces.
func (w *writer) prose(p *model.Prose) []booklet.Block {
	if p == nil {
		return nil
	}
	src := []byte(masked(p))
	m := &marker{w: w, src: src, prose: p}
	return m.blocks(markdown().Parser().Parse(text.NewReader(src)))
}

// line words a text that stands in one line, such as a caution.
func (w *writer) line(p *model.Prose) (out []booklet.Inline) {
	for i, b := range w.prose(p) {
		if x, ok := b.(*booklet.Paragraph); ok {
			if i > 0 {
				out = add(out, booklet.Text(" "))
			}
			out = add(out, x.Text...)
		}
	}
	return
}

// marker walks over a Markdown tree.
type marker struct {
	w     *writer
	src   []byte
	prose *model.Prose
}

func (m *marker) blocks(n ast.Node) (out []booklet.Block) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch x := c.(type) {
		case *ast.List:
			l := &booklet.List{Ordered: x.IsOrdered()}
			for i := x.FirstChild(); i != nil; i = i.NextSibling() {
				l.Items = append(l.Items, m.blocks(i))
			}
			out = append(out, l)
		case *ast.Heading:
			out = append(out, para([]booklet.Inline{booklet.Strong{Text: m.inlines(c)}}))
		case *ast.Blockquote:
			out = append(out, m.blocks(c)...)
		case *ast.CodeBlock, *ast.FencedCodeBlock:
			out = append(out, para(m.expand(string(c.Lines().Value(m.src)))))
		case *ast.HTMLBlock, *ast.ThematicBreak:
		default:
			if in := m.inlines(c); len(in) > 0 {
				out = append(out, para(in))
			}
		}
	}
	return
}

func (m *marker) inlines(n ast.Node) (out []booklet.Inline) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch x := c.(type) {
		case *ast.Text:
			out = add(out, m.expand(string(unescaped(x.Segment.Value(m.src))))...)
			if x.HardLineBreak() {
				out = append(out, booklet.Break{})
			} else if x.SoftLineBreak() {
				out = add(out, booklet.Text(" "))
			}
		case *ast.String:
			out = add(out, m.expand(string(x.Value))...)
		case *ast.Emphasis:
			if in := m.inlines(c); x.Level > 1 {
				out = append(out, booklet.Strong{Text: in})
			} else {
				out = append(out, booklet.Emphasis{Text: in})
			}
		case *ast.AutoLink:
			out = add(out, booklet.Text(string(x.URL(m.src))))
		case *ast.RawHTML:
		default:
			out = add(out, m.inlines(c)...)
		}
	}
	return
}

// unescaped takes the backslash from Markdown's escapes, which the parser leaves
// in the text of a segment, and reads its character references.
func unescaped(s []byte) []byte {
	var out []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' && i+1 < len(s) && strings.IndexByte("!\"#$%&'()*+,-./:;<=>?@[\\]^_`{|}~", s[i+1]) >= 0 {
			i++
		}
		out = append(out, s[i])
	}
	return out
}

// expand puts the declared values into a stretch of text.
func (m *marker) expand(s string) (out []booklet.Inline) {
	var b strings.Builder
	for _, r := range s {
		i := int(r) - firstSign
		if i < 0 || i >= len(m.prose.Braces) {
			b.WriteRune(r)
			continue
		}
		out = add(out, typed(b.String())...)
		b.Reset()
		out = add(out, m.w.value(m.prose.Braces[i])...)
	}
	return add(out, typed(b.String())...)
}

// Lint reports what a text may not hold: markup of web pages, which is never put
// into a booklet.
func Lint(p *model.Pattern) (all []finding.Finding) {
	for _, x := range p.Proses {
		if !strings.Contains(x.Text, "<") {
			continue // markup begins with it
		}
		src := []byte(masked(x))
		_ = ast.Walk(markdown().Parser().Parse(text.NewReader(src)), func(n ast.Node, enter bool) (ast.WalkStatus, error) {
			if n.Kind() == ast.KindRawHTML || n.Kind() == ast.KindHTMLBlock {
				if enter {
					all = append(all, rawHTML(x, rawText(n, src)))
				}
			}
			return ast.WalkContinue, nil
		})
	}
	return
}

func rawText(n ast.Node, src []byte) string {
	if r, ok := n.(*ast.RawHTML); ok {
		return string(r.Segments.Value(src))
	}
	return strings.TrimSpace(string(n.Lines().Value(src)))
}

func rawHTML(p *model.Prose, what string) finding.Finding {
	if i := strings.IndexByte(what, '\n'); i >= 0 {
		what = what[:i]
	}
	if r := []rune(what); len(r) > 40 {
		what = string(r[:40]) + "…"
	}
	span := p.Span
	if i := strings.Index(p.Source, what); i >= 0 && what != "" {
		span = p.At(i, i+len(what))
	}
	return finding.Finding{Rule: "markup-in-text", Severity: finding.Error, Place: finding.Place{Span: span, Label: "left out of the booklet"},
		Headline: "The text holds markup of a web page: " + what,
		Why:      "A booklet is printed as well as shown in a browser, so its text is Markdown: paragraphs, lists, *emphasis* and **strong**.",
		Help:     "Write it in Markdown. For a plain < write \\<."}
}
