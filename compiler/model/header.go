package model

import (
	"seamwarden/compiler/condition"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// header reads the head of the pattern.
func (b *builder) header(s Source) {
	n, ok := s.Node.(*dsl.Pattern)
	if !ok {
		return
	}
	if b.Title != "" {
		b.report(patternTwice(s.Span(s.File), b.TitleSpan))
		return
	}
	b.Title, b.TitleSpan = dsl.Unquote(n.Title.Text), dsl.SpanOf(n.Title.Tokens)
	b.inside(s, b.setting)
}

func (b *builder) setting(s Source) {
	switch n := s.Node.(type) {
	case *dsl.Setting:
		value := dsl.Unquote(n.Value.Text)
		switch n.Key.Text {
		case "edition":
			b.Edition = value
		case "maker":
			b.Maker = value
		case "about":
			b.About, b.AboutBody = value, b.quoted(n.Value, condition.True)
		case "level":
			b.Level = value
		case "packaging":
			b.Packaging = b.quoted(n.Value, condition.True)
		case "language":
			b.Lang = value
		}
	case *dsl.For:
		b.wearer(n, s.Span(s.File))
	case *dsl.GarmentKind:
		b.garmentKind(n)
	case *dsl.AllowSetting:
		b.Allow = b.amount(n.Amount)
	case *dsl.FinishSetting:
		b.Finish = policy(n, s.Span(s.File))
	case *dsl.Figure:
		b.CoverFigures = append(b.CoverFigures, b.figure(n))
	case *dsl.Spare:
		b.spare(n)
	}
}

func policy(n *dsl.FinishSetting, at finding.Span) *Policy {
	p := &Policy{Together: n.How == "together", Apart: n.How == "apart", Open: n.Open, Span: at}
	if n.With != nil {
		p.With = n.With.Text
	}
	if n.Toward != nil {
		p.Toward = n.Toward.Text
	}
	return p
}

// SizesFile finds the name of the size table that a pattern's head gives.
func SizesFile(sources []Source) (t Text) {
	for _, s := range sources {
		if _, ok := s.Node.(*dsl.Pattern); !ok {
			continue
		}
		for _, i := range s.Body {
			if n, ok := i.Node.(*dsl.Setting); ok && n.Key.Text == "sizes" {
				t = text(n.Value)
			}
		}
	}
	return
}
