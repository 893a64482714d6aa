package wording

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"seamwarden/compiler/booklet"
	"seamwarden/templates"
)

// phrases is the table of one language.
type phrases struct {
	Lang       string
	Labels     map[string]string
	Things     map[string]string
	EdgeWords  []string `yaml:"edge-words"`
	SeamWords  []string `yaml:"seam-words"`
	MarkWords  []string `yaml:"mark-words"`
	Operations map[string]string
	Phrases    map[string]string
	Techniques map[string]string
	Directions map[string]string
	Chapters   map[string]string
	Before     map[string]string
	Signals    map[string]string
	SignalNote string `yaml:"signal-note"`
	Hazards    map[string]hazard
	Wearer     map[string]string
	Sizes      map[string]string
	Choose     map[string]string
	Buy        map[string]string
	Cut        map[string]string
	Layouts    map[string]string
	Inspect    map[string]string
}

// hazard is a caution that is said unless the designer's own speak of it.
type hazard struct {
	Seek        []string
	Signal, Say string
}

// load reads the table of a language. There is English; another language is a
// file beside it.
func load(lang string) (*phrases, error) {
	src, err := templates.Phrases.ReadFile("phrases/" + lang + ".yaml")
	if err != nil {
		return nil, fmt.Errorf("there are no phrases for the language %q", lang)
	}
	var p phrases
	if err := yaml.Unmarshal(src, &p); err != nil {
		return nil, fmt.Errorf("the phrases of %s: %w", lang, err)
	}
	return &p, nil
}

// filling is what stands in the braces of a phrase.
type filling map[string][]booklet.Inline

// fill puts text into a phrase. A name without a filling stays as it is, so that
// a slip in a table shows in the first booklet.
func fill(phrase string, with filling) (out []booklet.Inline) {
	for {
		i := strings.IndexByte(phrase, '{')
		j := strings.IndexByte(phrase, '}')
		if i < 0 || j < i {
			return add(out, booklet.Text(phrase))
		}
		out = add(out, booklet.Text(phrase[:i]))
		if f, ok := with[phrase[i+1:j]]; ok {
			out = add(out, f...)
		} else {
			out = add(out, booklet.Text(phrase[i:j+1]))
		}
		phrase = phrase[j+1:]
	}
}

// add appends inlines and joins neighbouring text.
func add(out []booklet.Inline, more ...booklet.Inline) []booklet.Inline {
	for _, m := range more {
		t, isText := m.(booklet.Text)
		if isText && t == "" {
			continue
		}
		if isText && len(out) > 0 {
			if last, ok := out[len(out)-1].(booklet.Text); ok {
				out[len(out)-1] = last + t
				continue
			}
		}
		out = append(out, m)
	}
	return out
}

func plain(s string) []booklet.Inline {
	if s == "" {
		return nil
	}
	return []booklet.Inline{booklet.Text(s)}
}

// list joins texts: "a, b and c".
func list(items [][]booklet.Inline, and string) (out []booklet.Inline) {
	for i, it := range items {
		switch {
		case i > 0 && i == len(items)-1:
			out = add(out, booklet.Text(" "+and+" "))
		case i > 0:
			out = add(out, booklet.Text(", "))
		}
		out = add(out, it...)
	}
	return
}

// sentence gives text its capital and its full stop.
func sentence(in []booklet.Inline) []booklet.Inline {
	if len(in) == 0 {
		return nil
	}
	if t, ok := in[0].(booklet.Text); ok {
		in[0] = booklet.Text(upper(string(t)))
	}
	if t, ok := in[len(in)-1].(booklet.Text); !ok || !strings.HasSuffix(string(t), ".") {
		in = add(in, booklet.Text("."))
	}
	return in
}

func upper(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return s
	}
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}

// lower takes the capital from a name that stands inside a sentence, unless it
// is written in capitals throughout.
func lower(s string) string {
	r := []rune(s)
	if len(r) > 1 && strings.ToUpper(string(r[:2])) == string(r[:2]) && strings.ToLower(string(r[1])) != string(r[1]) {
		return s
	}
	if len(r) == 0 {
		return s
	}
	return strings.ToLower(string(r[:1])) + string(r[1:])
}

func endsIn(name string, words []string) bool {
	f := strings.Fields(name)
	if len(f) == 0 {
		return false
	}
	for _, w := range words {
		if f[len(f)-1] == w {
			return true
		}
	}
	return false
}
