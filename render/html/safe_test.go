package html

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"
)

func TestNothingOnThePageActsOrAsks(t *testing.T) {
	root := setPage(t, fixture())
	if n := elements(root, "script", "iframe", "object", "embed", "form", "base", "img", "foreignObject", "use", "image", "video", "audio"); len(n) > 0 {
		t.Errorf("the page holds <%s>", n[0].Data)
	}
	for _, n := range elements(root) {
		for _, a := range n.Attr {
			if strings.HasPrefix(a.Key, "on") || a.Key == "style" || a.Key == "src" || a.Key == "srcset" {
				t.Errorf("<%s> has the attribute %s", n.Data, a.Key)
			}
			if v := strings.ToLower(a.Val); strings.Contains(v, "http:") || strings.Contains(v, "https:") || strings.HasPrefix(strings.TrimSpace(v), "javascript:") {
				t.Errorf("<%s %s=%q> leads out of the page", n.Data, a.Key, a.Val)
			}
		}
	}
	for _, l := range elements(root, "link") {
		if attr(l, "rel") != "icon" || attr(l, "href") != "data:," {
			t.Errorf("a link element asks for %q", attr(l, "href"))
		}
	}
	if style := textOf(elements(root, "style")[0]); regexp.MustCompile(`@import|url\(|image\(|expression\(|https?:`).MatchString(style) {
		t.Error("the style sheet asks for something outside the page")
	}
}

// The hash is that of Content Security Policy Level 3, section 8.3 ("Usage of
// hashes"): base64 of the SHA-256 of the element's text in UTF-8.
func TestPolicyAllowsTheStyleAndNothingElse(t *testing.T) {
	root := setPage(t, fixture())
	policy := ""
	for _, m := range elements(root, "meta") {
		if attr(m, "http-equiv") == "Content-Security-Policy" {
			policy = attr(m, "content")
		}
	}
	styles := elements(root, "style")
	if len(styles) != 1 {
		t.Fatalf("%d style elements", len(styles))
	}
	sum := sha256.Sum256([]byte(textOf(styles[0])))
	want := "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) +
		"'; img-src data:; base-uri 'none'; form-action 'none'"
	if policy != want {
		t.Errorf("policy\n got %s\nwant %s", policy, want)
	}
}

func TestHostileTextIsShownAsText(t *testing.T) {
	root := setPage(t, fixture())
	odd := textOf(byID(root, "odd"))
	for _, h := range hostile {
		if n := strings.Count(odd, h); n < 4 {
			t.Errorf("%q appears %d times as text, want 4 and more", h, n)
		}
	}
	if !strings.Contains(textOf(elements(root, "nav")[0]), hostile[0]) {
		t.Error("the contents list has lost part of a title")
	}
	b := fixture()
	b.Title, b.Edition, b.Maker = hostile[1]+hostile[7], hostile[0], hostile[2]
	root = setPage(t, b)
	if got := textOf(elements(root, "h1")[0]); got != b.Title {
		t.Errorf("the title became %q", got)
	}
	if n := len(elements(root, "script", "img")); n != 0 {
		t.Errorf("%d elements were made from text", n)
	}
}

// allStrings lists the strings that a booklet shows: all but ids and those that
// belong to other renderers or steer the drawing.
func allStrings(v reflect.Value, out *[]string) {
	switch v.Kind() {
	case reflect.String:
		*out = append(*out, v.String())
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			allStrings(v.Elem(), out)
		}
	case reflect.Slice:
		for i := range v.Len() {
			allStrings(v.Index(i), out)
		}
	case reflect.Struct:
		unseen := []string{"ID", "To", "Lang", "Continued", "Page", "PageOf", "Figure", "Cap", "Join", "Anchor"}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.Type.Kind() != reflect.String || !slices.Contains(unseen, f.Name) {
				allStrings(v.Field(i), out)
			}
		}
	}
}

func TestNothingInTheBookletIsLost(t *testing.T) {
	b := fixture()
	var want []string
	allStrings(reflect.ValueOf(b), &want)
	if len(want) < 250 {
		t.Fatalf("found only %d texts in the booklet", len(want))
	}
	page := textOf(elements(setPage(t, b), "html")[0])
	for _, s := range want {
		if !strings.Contains(page, s) {
			t.Errorf("the page does not show %q", s)
		}
	}
}

func TestSameBookletSameBytes(t *testing.T) {
	first, err := Render(fixture())
	if err != nil {
		t.Fatal(err)
	}
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			if again, err := Render(fixture()); err != nil || !bytes.Equal(first, again) {
				t.Errorf("the page came out differently, error %v", err)
			}
		})
	}
	all.Wait()
}

func TestForbiddenCharactersAreReplaced(t *testing.T) {
	b := fixture()
	b.Title = "a\x00b\x07c\x7fd\u0085e\ufffef\xffg"
	out, err := Render(b)
	if err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := textOf(elements(root, "h1")[0]), "a\ufffdb\ufffdc\ufffdd\ufffde\ufffdf\ufffdg"; got != want {
		t.Errorf("the title became %q, want %q", got, want)
	}
}
