package html

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler/figure"
	"seamwarden/templates"
)

func styleSheet(t *testing.T) string {
	t.Helper()
	file, err := templates.HTML.ReadFile("html/style.css")
	if err != nil {
		t.Fatal(err)
	}
	return string(file)
}

// scheme reads the colours of the first :root rule after the given words.
func scheme(t *testing.T, style, after string) map[string]figure.Paint {
	t.Helper()
	_, rest, found := strings.Cut(style, after)
	if !found {
		t.Fatalf("the style sheet has no %q", after)
	}
	rule := regexp.MustCompile(`:root \{([^}]*)\}`).FindStringSubmatch(rest)[1]
	colours := map[string]figure.Paint{}
	for _, m := range regexp.MustCompile(`--([a-z-]+): #([0-9a-f]{6});`).FindAllStringSubmatch(rule, -1) {
		var c figure.Paint
		if _, err := fmt.Sscanf(m[2], "%02x%02x%02x", &c.R, &c.G, &c.B); err != nil {
			t.Fatal(err)
		}
		colours[m[1]] = c
	}
	return colours
}

// The least ratios are those of WCAG 2.2: 4.5 for text (1.4.3), 3 for what tells
// a control, its state or its focus (1.4.11).
func TestColoursHaveTheContrastOfTheStandard(t *testing.T) {
	style := styleSheet(t)
	for name, after := range map[string]string{"light": "", "dark": "@media screen and (prefers-color-scheme: dark)"} {
		colours := scheme(t, style, after)
		if len(colours) != 10 {
			t.Fatalf("the %s scheme has %d colours, want 10", name, len(colours))
		}
		for _, pair := range []struct {
			front, back string
			least       float64
		}{
			{"ink", "paper", 7}, {"ink", "tint", 7}, {"ink", "alarm-tint", 7}, {"soft", "paper", 4.5}, {"soft", "tint", 4.5},
			{"chalk", "paper", 4.5}, {"chalk", "tint", 4.5}, {"chalk", "alarm-tint", 4.5}, {"alarm", "alarm-tint", 4.5},
			{"alarm", "paper", 3}, {"line", "paper", 3}, {"line", "tint", 3}, {"focus", "paper", 3}, {"focus", "alarm-tint", 3}, {"focus", "tint", 3},
		} {
			if c := contrast(colours[pair.front], colours[pair.back]); c < pair.least {
				t.Errorf("%s scheme: %s on %s has %.2f, want %.1f", name, pair.front, pair.back, c, pair.least)
			}
		}
	}
}

func TestDarkPaperIsThatOfTheStyleSheet(t *testing.T) {
	if c := scheme(t, styleSheet(t), "prefers-color-scheme: dark")["paper"]; c != darkPaper {
		t.Errorf("the drawings take the dark page for %v, it is %v", darkPaper, c)
	}
}

// cssString is read back by the rule of CSS Syntax Level 3, section 4.3.7: a
// backslash, up to six hexadecimal digits, and one white space that ends them.
func TestCSSStringComesBack(t *testing.T) {
	escape := regexp.MustCompile(`\\([0-9a-f]{1,6}) `)
	for _, s := range append(hostile, "Marrow · Edition 1.2", "two  spaces", "\\a b\nc\"") {
		css := cssString(s)
		if body := css[1 : len(css)-1]; strings.ContainsAny(escape.ReplaceAllString(body, ""), "\"\\\n<>;{}") {
			t.Errorf("%q can end the string: %s", s, css)
		}
		back := escape.ReplaceAllStringFunc(css[1:len(css)-1], func(e string) string {
			var r rune
			if _, err := fmt.Sscanf(e, `\%x `, &r); err != nil {
				t.Fatal(err)
			}
			return string(r)
		})
		if back != s {
			t.Errorf("%q came back as %q", s, back)
		}
	}
}

func TestStyleSheetServesPrintMotionAndKeyboard(t *testing.T) {
	style := styleSheet(t)
	for _, part := range []string{"@media print", "@page", "display: table-header-group", "break-inside: avoid", "prefers-reduced-motion: no-preference", ":focus-visible", "forced-colors: active"} {
		if !strings.Contains(style, part) {
			t.Errorf("the style sheet has no %q", part)
		}
	}
	if strings.Count(style, "{") != strings.Count(style, "}") {
		t.Error("the braces of the style sheet do not match")
	}
	// Parts that only have a name, for a designer to take hold of.
	handles := []string{"imperial", "metric", "cover-words", "step-text"}
	page := string(mustRender(t))
	for _, class := range regexp.MustCompile(`class="([a-z -]+)"`).FindAllStringSubmatch(page, -1) {
		for _, c := range strings.Fields(class[1]) {
			if !strings.Contains(style, "."+c) && !slices.Contains(handles, c) {
				t.Errorf("the class %q has no rule", c)
			}
		}
	}
}

func mustRender(t *testing.T) []byte {
	t.Helper()
	out, err := Render(fixture())
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func BenchmarkRender(b *testing.B) {
	doc := fixture()
	for b.Loop() {
		if _, err := Render(doc); err != nil {
			b.Fatal(err)
		}
	}
}
