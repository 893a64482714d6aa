package pdf

// style is how a piece of text looks.
type style struct {
	family       family
	bold, italic bool
	size         float64
}

// align is where a line stands in its column.
type align int

const (
	left align = iota
	right
)

// textStyle is a style with the distance from line to line.
type textStyle struct {
	style
	leading float64
	align   align
}

func (t textStyle) aligned(a align) textStyle { t.align = a; return t }

func (t textStyle) italics() textStyle { t.italic = true; return t }

func (t textStyle) strong() textStyle { t.bold = true; return t }

// theme holds every size of the page's design. The text is read standing, from
// the other side of an ironing board: nothing that tells the sewist what to do
// is below 11 points; only captions and the lines at the page's edge are.
type theme struct {
	title, subtitle, lead     textStyle
	chapter, section, part    textStyle
	text, cell, cellHead      textStyle
	stepNumber, stepTitle     textStyle
	caption, edge, label      textStyle
	paraGap, blockGap, colGap float64
	measure                   float64 // the widest line of running text
	tickBig, tickSmall        float64
	hairline, rule, heavy     float64
}

func newTheme() theme {
	sans := func(size, leading float64, bold bool) textStyle {
		return textStyle{style: style{family: sans, bold: bold, size: size}, leading: leading}
	}
	serif := func(size, leading float64) textStyle {
		return textStyle{style: style{family: serif, size: size}, leading: leading}
	}
	return theme{
		title: sans(34, 40, true), subtitle: sans(14, 19, false), lead: serif(14, 19),
		chapter: sans(22, 27, true), section: sans(15, 20, true), part: sans(12.5, 17, true),
		text: serif(13, 17), cell: serif(11.5, 14.5), cellHead: sans(11, 14, true),
		stepNumber: sans(24, 26, true), stepTitle: sans(13.5, 18, true),
		caption: sans(9.5, 12, false), edge: sans(9, 12, false), label: sans(11, 15, true),
		paraGap: 6, blockGap: 11, colGap: 14, measure: 424,
		tickBig: 16, tickSmall: 10,
		hairline: 0.4, rule: 0.8, heavy: 1.6,
	}
}
