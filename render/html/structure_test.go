package html

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"seamwarden/compiler/booklet"
)

func TestPageHasItsFrame(t *testing.T) {
	root := setPage(t, fixture())
	for name, want := range map[string]int{"html": 1, "title": 7, "h1": 1, "main": 1, "nav": 1, "header": 1, "style": 1, "section": 6} {
		if got := len(elements(root, name)); got != want {
			t.Errorf("%d of <%s>, want %d", got, name, want)
		}
	}
	page := elements(root, "html")[0]
	if attr(page, "lang") != "en" || attr(page, "dir") != "ltr" {
		t.Errorf("language %q and direction %q", attr(page, "lang"), attr(page, "dir"))
	}
	first := elements(elements(root, "body")[0])[0]
	if !hasClass(first, "skip") || attr(first, "href") != "#before" {
		t.Errorf("the body begins with <%s href=%q>, not with the skip link", first.Data, attr(first, "href"))
	}
	if s := textOf(elements(root, "title")[0]); s != "Marrow Wrap Skirt – View B, with side pockets – Quillfen" {
		t.Errorf("window title %q", s)
	}
}

func TestDirectionFollowsTheScript(t *testing.T) {
	// The scripts are those of CLDR's likely subtags: Arabic and Persian in Arab,
	// Hebrew and Yiddish in Hebr, Azerbaijani in Latn unless it says otherwise.
	for lang, want := range map[string]string{"en": "ltr", "pt-BR": "ltr", "ar": "rtl", "he": "rtl", "fa": "rtl", "yi": "rtl", "az": "ltr", "az-Arab": "rtl", "ja": "ltr"} {
		b := fixture()
		b.Lang = lang
		if got := attr(elements(setPage(t, b), "html")[0], "dir"); got != want {
			t.Errorf("%s runs %s, want %s", lang, got, want)
		}
	}
}

func TestIDsAreUniqueAndAllReferencesResolve(t *testing.T) {
	root := setPage(t, fixture())
	seen := map[string]bool{}
	for _, n := range elements(root) {
		if id := attr(n, "id"); id != "" {
			if seen[id] {
				t.Errorf("the id %q stands twice", id)
			}
			seen[id] = true
		}
	}
	links := 0
	for _, n := range elements(root) {
		for _, id := range strings.Fields(attr(n, "aria-labelledby")) {
			if !seen[id] {
				t.Errorf("<%s> takes its name from %q, which is not there", n.Data, id)
			}
		}
		href, has := attr(n, "href"), n.Data == "a"
		if !has {
			continue
		}
		links++
		id, err := url.PathUnescape(strings.TrimPrefix(href, "#"))
		if err != nil || !strings.HasPrefix(href, "#") || !seen[id] {
			t.Errorf("the link %q leads nowhere", href)
		}
	}
	if links < 20 {
		t.Errorf("only %d links on the page", links)
	}
}

func TestIDsOfThePageKeepClearOfTheBooklets(t *testing.T) {
	b := fixture()
	b.Chapters = append(b.Chapters,
		booklet.Chapter{ID: "top", Title: "Top", Blocks: []booklet.Block{&booklet.Heading{ID: "contents", Level: 2, Title: "Contents"}}},
		booklet.Chapter{ID: "top-title", Title: "Caption", Blocks: []booklet.Block{&booklet.Heading{ID: "caption", Level: 2, Title: "Über"}}},
		booklet.Chapter{ID: "über", Title: "Not ASCII", Blocks: []booklet.Block{para(booklet.Link{To: "über", Text: text("here")})}})
	root := setPage(t, b)
	for _, id := range []string{"top", "contents", "top-title", "caption", "über"} {
		n := 0
		for _, e := range elements(root) {
			if attr(e, "id") == id {
				n++
			}
		}
		if n != 1 {
			t.Errorf("the id %q stands %d times", id, n)
		}
	}
	if byID(root, "top").Data != "section" {
		t.Error("the booklet's own id was taken from its chapter")
	}
}

func TestHeadingLevelsNeverSkip(t *testing.T) {
	last := 0
	for _, h := range elements(setPage(t, fixture()), "h1", "h2", "h3", "h4", "h5", "h6") {
		level := int(h.Data[1] - '0')
		if level > last+1 {
			t.Errorf("level %d after %d at %q", level, last, textOf(h))
		}
		if strings.TrimSpace(textOf(h)) == "" {
			t.Errorf("a heading of level %d has no words", level)
		}
		last = level
	}
}

func TestLevels(t *testing.T) {
	for _, c := range []struct{ in, want []int }{
		{[]int{2, 3, 3, 2}, []int{3, 4, 4, 3}},
		{[]int{3, 3, 2, 3}, []int{3, 3, 3, 4}}, // a chapter that begins one level too low
		{[]int{2, 4, 3}, []int{3, 4, 4}},
	} {
		l := &levels{base: 2}
		var got []int
		for _, in := range c.in {
			got = append(got, l.enter(in))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("headings %v became %v, want %v", c.in, got, c.want)
		}
	}
	deep := &levels{base: 5}
	deep.enter(2)
	if deep.step() != 6 || deep.enter(3) != 6 {
		t.Error("HTML has no heading below the sixth level")
	}
}

func TestContentsNameEveryChapterPartAndStep(t *testing.T) {
	root := setPage(t, fixture())
	var got []string
	for _, a := range elements(elements(root, "nav")[0], "a") {
		got = append(got, attr(a, "href"))
	}
	want := []string{"#before", "#shadings", "#care", "#sizes", "#cut", "#sew", "#pockets", "#step-1", "#step-2",
		"#closing", "#step-3", "#step-10", "#words", "#odd", "#odd-step"}
	if !slices.Equal(got, want) {
		t.Errorf("contents\n got %v\nwant %v", got, want)
	}
	if a := withClass(root, "step-links")[0]; !strings.Contains(textOf(a), "Step 1 Stay the pocket opening") {
		t.Errorf("the link to the first step reads %q", textOf(a))
	}
}

func TestStepsCanBeTickedAndFound(t *testing.T) {
	root := setPage(t, fixture())
	for _, want := range []struct {
		id, name, title, when string
		figures               int
		level                 string
	}{
		{"step-1", "Step 1", "Step 1: Stay the pocket opening", "View B, with side pockets", 1, "h4"},
		{"step-2", "Step 2", "Step 2: Sew the pocket bag to the front", "", 2, "h4"},
		{"step-3", "Step 3", "Step 3: Make the ties", "", 0, "h4"},
		{"step-10", "Step 10", "Step 10: Hem the skirt", "", 0, "h4"},
	} {
		s := byID(root, want.id)
		if s == nil || s.Data != "article" {
			t.Fatalf("no article %q", want.id)
		}
		label := elements(s, "label")[0]
		if box := elements(label, "input"); textOf(label) != want.name || len(box) != 1 || attr(box[0], "type") != "checkbox" {
			t.Errorf("%s: the tick box is called %q", want.id, textOf(label))
		}
		title := byID(root, attr(s, "aria-labelledby"))
		if title.Data != want.level || textOf(title) != want.title {
			t.Errorf("%s: <%s> %q, want <%s> %q", want.id, title.Data, textOf(title), want.level, want.title)
		}
		when := ""
		for _, w := range withClass(s, "when") {
			when += textOf(w)
		}
		if when != want.when || len(elements(s, "figure")) != want.figures {
			t.Errorf("%s: condition %q and %d figures", want.id, when, len(elements(s, "figure")))
		}
	}
	if sub := elements(byID(root, "step-2"), "h5"); len(sub) != 1 || textOf(sub[0]) != "If the bag shows" {
		t.Error("the heading inside step 2 is not one level below the step")
	}
}

func TestBlocksBecomeTheElementsMeantForThem(t *testing.T) {
	root := setPage(t, fixture())
	if !strings.Contains(textOf(withClass(byID(root, "care").Parent, "caution")[0]), "Warning") {
		t.Error("the first caution has lost its signal word")
	}
	for _, c := range withClass(root, "caution") {
		if attr(c, "role") != "note" || strings.TrimSpace(textOf(withClass(c, "signal")[0])) == "" {
			t.Errorf("the caution %q is not marked in words", textOf(c))
		}
	}
	if dt := byID(root, "term-stay"); dt.Data != "dt" || dt.NextSibling.NextSibling.Data != "dd" || inside(dt, "dl") == nil {
		t.Error("a term is not a definition")
	}
	for _, g := range withClass(root, "group") {
		if name := byID(root, attr(g, "aria-labelledby")); !hasClass(name, "when") || textOf(name) == "" {
			t.Error("a group does not say for which garments it holds")
		}
	}
	ordered := inside(byID(root, "shadings"), "section")
	if n := elements(ordered, "ol"); len(n) != 1 || inside(n[0], "li") == nil {
		t.Error("the numbered list does not stand inside the item of the other list")
	}
	if n := len(elements(root, "br")); n != 1 {
		t.Errorf("%d line breaks, want 1", n)
	}
}

func TestMeasuresBreakOnlyBetweenTheSystems(t *testing.T) {
	m := withClass(byID(setPage(t, fixture()), "before"), "measure")
	if len(m) != 2 {
		t.Fatalf("%d measures, want 2", len(m))
	}
	for i, want := range []struct{ m, order string }{{seam.String(), "imperial metric"}, {narrow.String(), "metric imperial"}} {
		var order []string
		for _, s := range elements(m[i], "span") {
			order = append(order, attr(s, "class"))
		}
		if textOf(m[i]) != want.m || strings.Join(order, " ") != want.order {
			t.Errorf("measure %q, %v", textOf(m[i]), order)
		}
	}
	var out strings.Builder
	writeMeasure(&out, booklet.Measure{Metric: "3\u00a0mm"})
	if want := "<span class=\"measure\"><span class=\"metric\">3\u00a0mm</span></span>"; out.String() != want {
		t.Errorf("a measure in one system is %s, want %s", out.String(), want)
	}
}

func TestControlsHaveNames(t *testing.T) {
	n := 0
	for _, box := range elements(setPage(t, fixture()), "input") {
		n++
		label := inside(box, "label")
		if label == nil || strings.TrimSpace(textOf(label)) == "" {
			t.Errorf("the tick box in %q has no name", textOf(box.Parent.Parent))
		}
	}
	if n != 5+5+1 {
		t.Errorf("%d tick boxes, want 5 for steps and 6 for rows", n)
	}
}

func TestOnlyKnownElements(t *testing.T) {
	known := strings.Fields(`html head meta title link style body a header div p h1 h2 h3 h4 h5 h6 em strong br span
		dl dt dd dfn ul ol li figure figcaption svg desc path text nav main section article label input
		table caption thead tbody tr th td`)
	counts := map[string]int{}
	for _, n := range elements(setPage(t, fixture())) {
		if !slices.Contains(known, n.Data) {
			t.Errorf("unexpected <%s>", n.Data)
		}
		counts[n.Data]++
	}
	for _, name := range known {
		if counts[name] == 0 && name != "h6" {
			t.Errorf("the page has no <%s>, so its setting is not tested", name)
		}
	}
}
