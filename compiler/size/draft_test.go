package size

import (
	"testing"

	"seamwarden/compiler/measure"
)

const cups = `unit: cm
sizes: [36, 38, 40, 42]
rounding:
  body: 1/8in, 1cm
  cloth: [1/4yd, 0.05m]
body:
  waist: { values: [68, 72, 76, 80] }
finished:
  waist: { over: waist, values: [70, 74, 78, 82] }
  chest: { over: bust, values: [100, 104, 108, 112] }
drafts:
  b-cup: { name: B cup, body: { bust: { name: Bust girth, values: [84, 88, 92, 96] } } }
  d-cup:
    name: D cup
    when: cup is d
    sizes: [38, 40]
    body:
      bust: { name: Bust girth, unit: in, values: [36 1/2, 38] }
`

func TestDrafts(t *testing.T) {
	c := chart(t, cups)
	if len(c.Drafts) != 2 || c.Drafts[0].Name != "B cup" || c.Drafts[1].When != "cup is d" {
		t.Fatalf("%+v", c.Drafts)
	}
	d := c.Drafts[1]
	if got, ok := d.Value("waist", "40"); !ok || got != measure.Of(78, 1, measure.Centimetre) {
		t.Errorf("waist of 40 in the D cup: %v %v", got, ok) // the finished one
	}
	if got := d.BodyRow("waist").Values; len(got) != 2 || got[0] != measure.Of(72, 1, measure.Centimetre) {
		t.Errorf("waist of the D cup: %v", got)
	}
	if got := d.Ease(d.FinishedRow("chest"))[1]; got != measure.Of(108, 1, measure.Centimetre).Sub(inches(38, 1)) {
		t.Errorf("ease of the D cup: %v", got)
	}
	if c.BodyRow("bust") != nil || c.Lead() != "bust" || len(c.Rows()) != 3+4+4 {
		t.Errorf("bust above the drafts, or %s leads, or %d rows", c.Lead(), len(c.Rows()))
	}
}

func TestDeclaredRounding(t *testing.T) {
	c := chart(t, cups)
	waist, bust, finished := c.BodyRow("waist"), c.Drafts[1].BodyRow("bust"), c.FinishedRow("waist")
	for _, p := range []struct {
		row           *Row
		l             measure.Length
		inches, metre string
	}{
		{waist, waist.Values[0], "26¾\u00a0in", "68\u00a0cm"},    // 26.77 to 1/8 in
		{waist, waist.Values[1], "28⅜\u00a0in", "72\u00a0cm"},    // 28.35
		{finished, waist.Values[1], "28¼\u00a0in", "72\u00a0cm"}, // finished is not declared: 1/4 in
		{bust, bust.Values[0], "36½\u00a0in", "93\u00a0cm"},      // 92.71 to 1 cm; the row is written in inches
		{bust, bust.Values[1], "38\u00a0in", "97\u00a0cm"},       // 96.52
	} {
		i, m := c.Print(p.row, p.l)
		if i != p.inches || m != p.metre {
			t.Errorf("%s %v is printed %s, %s; want %s, %s", p.row.Key, p.l, i, m, p.inches, p.metre)
		}
	}
	cloth := Row{Part: ClothPart, Unit: measure.Yard}
	if i, m := c.Print(&cloth, measure.Of(9, 8, measure.Yard)); i != "1⅛\u00a0yd" || m != "1.05\u00a0m" { // 1.0287 m, up to 0.05 m
		t.Errorf("1 1/8 yd is printed %s, %s", i, m)
	}
	cloth.Unit = measure.Metre
	if i, m := c.Print(&cloth, measure.Of(11, 10, measure.Metre)); i != "1¼\u00a0yd" || m != "1.1\u00a0m" { // 1.203 yd, up to 1/4
		t.Errorf("1.1 m is printed %s, %s", i, m)
	}
}
