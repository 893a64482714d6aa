package figure

import (
	"fmt"
	"strings"
	"testing"

	"seamwarden/dsl/finding"
)

// unsupportedCases: ^ stands before what the finding must point at.
var unsupportedCases = []struct{ body, rule, word string }{
	{`^<script>alert(1)</script>`, RuleActiveContent, "<script>"},
	{`<defs>^<script/></defs>`, RuleActiveContent, "<script>"},
	{`<g display="none">^<script/></g>`, RuleActiveContent, "<script>"},
	{`<metadata>^<script/></metadata>`, RuleActiveContent, "<script>"},
	{`<h:div xmlns:h="http://www.w3.org/1999/xhtml">^<h:iframe src="x"/></h:div>`, RuleActiveContent, "<iframe>"},
	{`^<foreignObject><script/><b onclick="x"/></foreignObject>`, RuleActiveContent, "<foreignObject>"},
	{`<path d="M0 0L1 1" onclick="^x()"/>`, RuleActiveContent, "onclick"},
	{`<g ONLOAD="^x()"/>`, RuleActiveContent, "ONLOAD"},
	{`<a xlink:href="^https://a.example/"><path d="M0 0L1 1"/></a>`, RuleActiveContent, "outside"},
	{`<a href="^javascript:x()"/>`, RuleActiveContent, "outside"},
	{`<use href="^other.svg#x"/>`, RuleActiveContent, "outside"},
	{`<image href="^//a.example/p.png"/>`, RuleActiveContent, "outside"},
	{`<defs><linearGradient href="^http://a.example/#g"/></defs>`, RuleActiveContent, "outside"},
	{`<path d="M0 0L1 1" fill="^url(http://a.example/x)"/>`, RuleActiveContent, "outside"},
	{`<path d="M0 0L1 1" style="^filter:url( 'x.svg#f' )"/>`, RuleActiveContent, "outside"},
	{`^<style>@import "x.css";</style>`, RuleActiveContent, "outside"},
	{`^<style>a{fill:url(x.svg)}</style>`, RuleActiveContent, "outside"},
	{`<metadata/>^<?xml-stylesheet href="x.css"?>`, RuleActiveContent, "style sheet"},
	{`^<image href="data:image/png;base64,AAAA"/>`, ruleUnsupported, "picture"},
	{`<defs><path id="a" d="M0 0L1 1"/></defs>^<use href="#a"/>`, ruleUnsupported, "<use>"},
	{`^<svg/>`, ruleUnsupported, "inside the drawing"},
	{`^<switch><g/></switch>`, ruleUnsupported, "<switch>"},
	{`^<style>path{fill:red}</style>`, ruleUnsupported, "<style>"},
	{`^<filter id="f"/>`, ruleUnsupported, "Filters"},
	{`<path d="M0 0L1 1" filter="^url(#f)"/>`, ruleUnsupported, "Filters"},
	{`<path d="M0 0L1 1" style="stroke:red; filter: ^blur(2px)"/>`, ruleUnsupported, "Filters"},
	{`^<mask/>`, ruleUnsupported, "Masking"},
	{`<g mask="^url(#m)"/>`, ruleUnsupported, "Masking"},
	{`^<clipPath/>`, ruleUnsupported, "Clipping"},
	{`<g clip-path="^url(#m)"/>`, ruleUnsupported, "Clipping"},
	{`^<linearGradient/>`, ruleUnsupported, "gradient"},
	{`^<radialGradient/>`, ruleUnsupported, "gradient"},
	{`^<pattern/>`, ruleUnsupported, "pattern"},
	{`<path d="M0 0L1 1" fill="^url(#g)"/>`, ruleUnsupported, "gradient"},
	{`^<marker/>`, ruleUnsupported, "Arrowheads"},
	{`<path d="M0 0L1 1" marker-end="^url(#g)"/>`, ruleUnsupported, "Arrowheads"},
	{`<path d="M0 0L1 1">^<animate/></path>`, "", ""}, // inside a shape nothing is drawn anyway
	{`^<animate/>`, ruleUnsupported, "Movement"},
	{`^<set/>`, ruleUnsupported, "Movement"},
	{`<g opacity="^.5"/>`, ruleUnsupported, "See-through"},
	{`<g style="fill-opacity:^50%"/>`, ruleUnsupported, "See-through"},
	{`<g stroke-opacity="^0.99"/>`, ruleUnsupported, "See-through"},
	{`^<path d="M0 0L1 1" stroke="red" stroke-miterlimit="10"/>`, ruleUnsupported, "corners"},
	{`<path d="M0 0L1 1" vector-effect="^non-scaling-stroke"/>`, ruleUnsupported, "width"},
	{`<g style="mix-blend-mode:^multiply"/>`, ruleUnsupported, "Mixing"},
	{`<g style="transform:^rotate(4deg)"/>`, ruleUnsupported, "transform"},
	{`<g style="wobble:^yes"/>`, ruleUnsupported, "“wobble”"},
	{`<g fill="^hsl(3,4%,5%)"/>`, ruleUnsupported, "“hsl(3,4%,5%)”"},
	{`<g fill="^#12345"/>`, ruleUnsupported, "“#12345”"},
	{`^<wobble/>`, ruleUnsupported, "<wobble>"},
	{`<g stroke-width="^abc"/>`, ruleUnreadable, "stroke-width"},
	{`<g style="stroke-width:2^furlong"/>`, ruleUnreadable, "stroke-width"},
	{`<g stroke-width="^-1"/>`, ruleUnreadable, "stroke-width"},
	{`<g style="fill:red;^nonsense"/>`, ruleUnreadable, "style"},
	{`<g transform="^turn(3)"/>`, ruleUnreadable, "transform"},
	{`<rect width="^-3" height="4"/>`, ruleUnreadable, "width"},
	{`<rect width="^NaN" height="4"/>`, ruleUnreadable, "width"},
	{`<rect width="^1e999" height="4"/>`, ruleUnreadable, "width"},
	{`^<rect width="1e300" height="4"/>`, ruleUnreadable, "too far out"},
	{`^<rect width="5" height="4" transform="scale(1e150) scale(1e150)"/>`, ruleUnreadable, "too far out"},
	{`<polygon points="1 2 3^4"/>`, ruleUnreadable, "points"},
	{`<polygon points="1 2 ^a"/>`, ruleUnreadable, "points"},
	{`<line x2="4" stroke="red" stroke-dasharray="^1 -1"/>`, ruleUnreadable, "dash"},
	{`<g font-weight="^fat"/>`, ruleUnreadable, "font-weight"},
	{`<g stroke-linecap="^pointed"/>`, ruleUnreadable, "linecap"},
}

func TestUnsupported(t *testing.T) {
	for _, c := range unsupportedCases {
		mark := strings.IndexByte(c.body, '^')
		body := strings.Replace(c.body, "^", "", 1)
		src := svg(body)
		d, fs := Read("f.svg", []byte(src))
		sound(t, []byte(src), d, fs)
		if d == nil {
			t.Errorf("%s: the drawing is lost", c.body)
		}
		if c.rule == "" {
			continue
		}
		if len(fs) != 1 {
			t.Errorf("%s: %d findings %v", c.body, len(fs), fs)
			continue
		}
		f := fs[0]
		wantSeverity := finding.Error
		if c.rule == ruleUnsupported {
			wantSeverity = finding.Warning
		}
		if f.Rule != c.rule || f.Severity != wantSeverity || !strings.Contains(f.Headline, c.word) {
			t.Errorf("%s: %s %s: %s", c.body, f.Severity, f.Rule, f.Headline)
		}
		if want := strings.Index(src, body) + mark; f.Place.Start.Offset != want {
			t.Errorf("%s: at offset %d, want %d (%s)", c.body, f.Place.Start.Offset, want, f.Headline)
		}
	}
}

// TestHarmless holds what drawing programs write and nobody sees.
func TestHarmless(t *testing.T) {
	for _, body := range []string{
		`<defs><linearGradient id="g"><stop offset="0"/></linearGradient><clipPath id="c"><rect/></clipPath><style> /* none */ </style></defs>`,
		`<x:namedview xmlns:x="urn:x" pagecolor="#fff"><x:grid/></x:namedview>`,
		`<g style="-inkscape-font-specification:Sans;font-family:Sans;clip-path:none;opacity:1;letter-spacing:0px;paint-order:normal"/>`,
		`<g id="layer" class="a" data-x="y" aria-label="z" tabindex="0" xml:space="preserve" marker-end="none" fill-opacity="100%"/>`,
		`<style type="text/css"></style>`,
	} {
		read(t, svg(body))
	}
	read(t, `<?xml version="1.0" encoding="UTF-8" standalone="no"?><!-- made by hand --><svg style="width:100%;height:auto" version="1.1" viewBox="0 0 9 9"/>`)
	read(t, `<?xml version="1.0" encoding="iso-8859-1"?><svg viewBox="0 0 9 9"/>`)
	read(t, "\xef\xbb\xbf<svg viewBox='0 0 9 9'/>\r\n")
}

var hostileCases = []struct{ name, src, headline, place string }{
	{"empty", "", "empty", "0:0"},
	{"blank", " \n\t", "empty", "0:0"},
	{"mark only", "\xef\xbb\xbf", "empty", "0:0"},
	{"text", "hello", "no drawing", "1:1"},
	{"text after", "<svg viewBox='0 0 9 9'/>x", "outside", "1:25"},
	{"html", "<html/>", "no <svg>", "1:1"},
	{"comment only", "<!-- svg -->", "no drawing", "0:0"},
	{"other namespace", "<svg xmlns='urn:x' viewBox='0 0 9 9'/>", "no <svg>", "1:1"},
	{"no size", "<svg/>", "how large", "1:1"},
	{"width only", "<svg width='9'/>", "how large", "1:1"},
	{"no width", "<svg viewBox='0 0 0 9'/>", "viewBox", "1:15"},
	{"negative", "<svg viewBox='0 0 9 -9'/>", "viewBox", "1:15"},
	{"three numbers", "<svg viewBox='0 0 9'/>", "viewBox", "1:19"},
	{"not a number", "<svg viewBox='0 0 NaN 9'/>", "viewBox", "1:19"},
	{"huge", "<svg viewBox='0 0 1e300 9'/>", "viewBox", "1:15"},
	{"strip", "<svg viewBox='0 0 1e6 .001'/>", "narrow", "1:1"},
	{"width of nothing", "<svg width='0' height='9'/>", "width", "1:13"},
	{"unclosed", "<svg viewBox='0 0 9 9'>\n<g>", "ends before <g> is closed", "2:3"},
	{"crossed", "<svg viewBox='0 0 9 9'>\n  <g></svg>", "<g> is not closed", "2:6"},
	{"closed twice", "<svg viewBox='0 0 9 9'/>\n</g>", "never opened", "2:1"},
	{"half a tag", "<svg viewBox='0 0 9 9'", "middle of a tag", "1:22"},
	{"bare attribute", "<svg viewBox>", "name=\"value\"", "1:13"},
	{"unquoted", "<svg viewBox=9>", "name=\"value\"", "1:14"},
	{"ampersand", "<svg viewBox='0 0 9 9'><title>A & B</title></svg>", "entities", "1:33"},
	{"unknown entity", "<svg viewBox='0 0 9 9'><title>&bomb;</title></svg>", "entities", "1:36"},
	{"not XML's characters", "<svg viewBox='0 0 9 9'><title>a\x00</title></svg>", "does not allow", ""},
	{"latin-1", "<svg viewBox='0 0 9 9'><title>caf\xe9</title></svg>", "UTF-8", "1:34"},
	{"utf-16", "\xff\xfe<\x00s\x00", "UTF-8", "1:1"},
	{"declared latin-1", "<?xml version='1.0' encoding='iso-8859-1'?><svg viewBox='0 0 9 9'><title>é</title></svg>", "UTF-8", "1:1"},
	{"doctype", "<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"x.dtd\"><svg viewBox='0 0 9 9'/>", "DOCTYPE", "1:1"},
	{"entity bomb", "<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;&a;'>]><svg viewBox='0 0 9 9'><title>&b;</title></svg>", "DOCTYPE", "1:1"},
	{"twice", "<svg viewBox='0 0 9 9'>\n<g fill='red' fill='blue'/></svg>", "twice", "2:21"},
	{"second root", "<svg viewBox='0 0 9 9'/><svg viewBox='0 0 9 9'/>", "second drawing", "1:25"},
	{"deep", svg(strings.Repeat("<g>", 300) + strings.Repeat("</g>", 300)), "nested deeper", ""},
	{"large", "<svg viewBox='0 0 9 9'>" + strings.Repeat(" ", mostBytes) + "</svg>", "5 MB", "0:0"},
	{"long path", svg(`<path d="M0 0` + strings.Repeat("h1", mostCommands+1) + `"/>`), "200,000", ""},
	{"many paths", svg(strings.Repeat(`<path d="M0 0h1v1h1v1h1v1h1v1h1v1h1v1h1v1h1v1h1v1h1v1"/>`, 10_000)), "200,000", ""},
	{"many points", svg(`<polyline points="` + strings.Repeat("1 2 ", mostCommands+1) + `"/>`), "200,000", ""},
	{"many shapes", svg(strings.Repeat(`<rect width='1' height='1'/>`, mostItems)), "", ""}, // passes one of the limits
}

func TestHostile(t *testing.T) {
	for _, c := range hostileCases {
		d, fs := Read("f.svg", []byte(c.src))
		if d != nil || len(fs) == 0 {
			t.Errorf("%s: drawing %v, %d findings", c.name, d != nil, len(fs))
			continue
		}
		f := fs[len(fs)-1]
		if f.Rule != ruleUnreadable || f.Severity != finding.Error || !strings.Contains(f.Headline, c.headline) {
			t.Errorf("%s: %s: %s", c.name, f.Rule, f.Headline)
		}
		if at := fmt.Sprintf("%d:%d", f.Place.Start.Line, f.Place.Start.Column); c.place != "" && at != c.place {
			t.Errorf("%s: at %s, want %s (%s)", c.name, at, c.place, f.Headline)
		}
	}
}

// TestManyFindings checks that a file full of faults is listed in part, and that
// one habit is one finding.
func TestManyFindings(t *testing.T) {
	_, fs := Read("f.svg", []byte(svg(strings.Repeat("<script/>", 5000))))
	if len(fs) != mostErrors+1 || !strings.Contains(fs[0].Headline, "4900 more") {
		t.Errorf("%d findings, first %q", len(fs), fs[0].Headline)
	}
	_, fs = Read("f.svg", []byte(svg(strings.Repeat(`<g opacity=".5"/>`, 12))))
	if len(fs) != 1 || !strings.Contains(fs[0].Headline, "12 times") || len(fs[0].Related) != mostRelated {
		t.Errorf("%v", fs)
	}
}

// TestColumnsCountCharacters checks places after letters of several bytes.
func TestColumnsCountCharacters(t *testing.T) {
	_, fs := Read("f.svg", []byte("\xef\xbb\xbf<svg viewBox='0 0 9 9'><title>Säume</title><script/></svg>"))
	if p := fs[0].Place.Start; p.Line != 1 || p.Column != 44 {
		t.Errorf("at %d:%d, want 1:44", p.Line, p.Column)
	}
}
