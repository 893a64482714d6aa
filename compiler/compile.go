// Package compiler is the front door: a folder's files in, a pattern and its
// findings out.
//
// It reads through fs.FS and never writes. What it is given must not reach
// outside the pattern's folder; the command hands it a rooted file system.
package compiler

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"seamwarden/compiler/assembly"
	"seamwarden/compiler/check"
	"seamwarden/compiler/lay/wanted"
	"seamwarden/compiler/model"
	"seamwarden/compiler/size"
	"seamwarden/compiler/wording"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Root is the file in which every pattern begins.
const Root = "pattern.seam"

// maxFile is the largest file of any kind that is read, in bytes.
const maxFile = 8 << 20

// Result is what a pattern compiles to. Sources holds the text of every file
// that a finding may point into. Accepted are the findings that remarks in the
// source accept; they are not among Findings. Unread counts the errors that kept
// a part of the pattern out of the model.
type Result struct {
	Pattern  *model.Pattern
	Findings []finding.Finding
	Accepted []finding.Accepted
	Unread   int
	Sources  map[string]string
	Files    []*dsl.File
	Lays     func() *Lays // what is to be laid, and what is remembered of it
}

// ErrNoPattern says that a folder has no pattern in it.
var ErrNoPattern = errors.New("no " + Root + " in this folder")

// Compile reads the pattern in a folder and checks it. The error is not nil only
// if nothing could be read at all. Several files of the folder are read at a time.
// also names rules that run only when they are asked for.
func Compile(folder fs.FS, also ...string) (*Result, error) {
	r := &reader{folder: folder, ahead: newAhead(), result: &Result{Sources: map[string]string{}}, seen: map[string]*dsl.File{}, shown: map[string]bool{}, traced: map[string]bool{}}
	if _, err := fs.Stat(folder, Root); errors.Is(err, fs.ErrNotExist) {
		return nil, ErrNoPattern
	}
	sources := r.file(Root, finding.Span{File: Root}, nil)
	if r.rootErr != nil {
		return nil, r.rootErr
	}
	r.openDrawings()
	sizesFile := model.SizesFile(sources)
	chart := r.sizes(sizesFile)
	r.cloth(sources, chart, sizesFile)
	p := model.Build(sources, chart, sizesFile)
	assembly.Deduce(p)
	figures := r.figures(p)
	shapes := r.outlines(p)
	lays := r.lays(p)
	out := r.result
	out.Pattern = p
	read := append(append(out.Findings, wording.Lint(p)...), p.Findings...)
	out.Unread = unread(read)
	unused := r.unusedWords(p)
	judged := check.Run(p, out.Unread > 0, also...)
	if out.Lays = lays; out.Unread == 0 && clean(shapes) {
		judged = append(judged, r.laysJudged(lays, judged)...)
	}
	read = append(append(unexplained(read, judged), shapes...), r.draw(figures)...)
	if clean(read) && clean(judged) {
		judged = append(append(append(judged, unused.wait()...), r.orphans()...), r.notLaid(p)...)
	}
	out.accept(read, judged, out.Unread == 0, also)
	finding.Sort(out.Findings)
	return out, nil
}

// reader gathers the files of a folder.
type reader struct {
	folder  fs.FS
	ahead   *ahead
	result  *Result
	seen    map[string]*dsl.File
	shown   map[string]bool // the drawings that figures show
	traced  map[string]bool // the outlines of pieces
	plan    *wanted.Plan
	rootErr error
}

func (r *reader) report(f finding.Finding) { r.result.Findings = append(r.result.Findings, f) }

// file reads a source file and puts the files it includes in their places.
// stack holds the files that are being read.
func (r *reader) file(name string, at finding.Span, stack []string) (all []model.Source) {
	for _, s := range stack {
		if s == name {
			r.report(includeCycle(at, append(stack, name)))
			return nil
		}
	}
	if r.seen[name] != nil {
		r.report(includedTwice(at, name))
		return nil
	}
	read := r.source(name).wait()
	if read.err != nil {
		if name == Root {
			r.rootErr = fmt.Errorf("%s: %w", Root, plain(read.err))
			return nil
		}
		r.report(cannotOpen(at, name, "source", read.err))
		return nil
	}
	f := read.file
	r.seen[name] = f
	r.result.Sources[name] = f.Source
	r.result.Files = append(r.result.Files, f)
	r.result.Findings = append(r.result.Findings, f.Findings...)
	if len(f.Sentences) == 0 && len(f.Findings) == 0 {
		r.report(emptyFile(name))
	}
	for _, s := range f.Sentences {
		inc, ok := s.Node.(*dsl.Include)
		if !ok {
			all = append(all, model.Source{Sentence: s, File: name})
			continue
		}
		target, span := dsl.Unquote(inc.File.Text), dsl.SpanOf(inc.File.Tokens)
		if clean, ok := r.inside(target, span, name); ok {
			if !strings.HasSuffix(clean, ".seam") {
				r.report(includeOther(span, target))
				continue
			}
			all = append(all, r.file(clean, span, append(stack, name))...)
		}
	}
	return all
}

// inside resolves a file name as it is written in a file of the pattern. Names
// are from the pattern's folder; what leads out of it is refused.
func (r *reader) inside(target string, at finding.Span, from string) (string, bool) {
	clean, ok := insideFolder(target)
	if !ok {
		r.report(outside(at, target))
	}
	return clean, ok
}

func insideFolder(target string) (string, bool) {
	clean := path.Clean(strings.ReplaceAll(target, `\`, "/"))
	if target == "" || path.IsAbs(clean) || clean == ".." || strings.HasPrefix(clean, "../") || strings.Contains(clean, ":") || !fs.ValidPath(clean) {
		return "", false
	}
	return clean, true
}

// read gives the bytes of a file, if it is a plain file of a sensible size.
func (r *reader) read(name string) ([]byte, error) {
	f, err := r.folder.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	st, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if !st.Mode().IsRegular() {
		return nil, errNotAFile
	}
	if st.Size() > maxFile {
		return nil, fmt.Errorf("it has %d MB, and at most %d are read", st.Size()>>20, maxFile>>20)
	}
	var b bytes.Buffer
	b.Grow(int(st.Size()) + bytes.MinRead) // so that the end is found without moving it
	_, err = b.ReadFrom(io.LimitReader(f, maxFile+1))
	return b.Bytes(), err
}

var errNotAFile = errors.New("it is not a file")

// sizes reads the size table that the pattern names.
func (r *reader) sizes(t model.Text) *size.Chart {
	if t.Text == "" {
		return nil
	}
	name, ok := r.inside(t.Text, t.Span, Root)
	if !ok {
		return nil
	}
	read := r.table(name).wait()
	if read.err != nil {
		r.report(cannotOpen(t.Span, name, "size table", read.err))
		return nil
	}
	r.result.Sources[name] = string(read.src)
	r.result.Findings = append(r.result.Findings, read.found...)
	return read.chart
}

// cloth reads the tables of cloth that sentences name, into the chart by whose sizes
// they go.
func (r *reader) cloth(sources []model.Source, chart *size.Chart, sizes model.Text) {
	for _, t := range model.NeedsFiles(sources) {
		name, ok := r.inside(t.Text, t.Span, Root)
		switch {
		case !ok:
		case chart == nil && sizes.Text != "": // it could not be read
		case chart == nil:
			r.report(clothWithoutSizes(t.Span, name))
		default:
			src, err := r.read(name)
			if err != nil {
				r.report(cannotOpen(t.Span, name, "table of cloth", err))
				continue
			}
			r.result.Sources[name] = string(src)
			r.result.Findings = append(r.result.Findings, size.ReadCloth(name, src, chart)...)
		}
	}
}

// figures gives every figure of the pattern whose file could be opened. Their
// drawings are read beside the rules, which know nothing of them.
func (r *reader) figures(p *model.Pattern) (all []*model.Figure) {
	each := func(f *model.Figure) {
		name, ok := r.inside(f.File.Text, f.File.Span, Root)
		if !ok {
			return
		}
		if !isDrawing(name) {
			r.report(notSVG(f.File.Span, name))
			return
		}
		file := r.opened(name).wait()
		if file.err != nil {
			r.report(cannotOpen(f.File.Span, name, "figure", file.err))
			return
		}
		r.result.Sources[name] = string(file.src)
		all = append(all, f)
	}
	for _, f := range p.CoverFigures {
		each(f)
	}
	for _, v := range p.Views {
		for _, f := range v.Figures {
			each(f)
		}
	}
	for _, s := range p.Steps() {
		for _, i := range s.Items {
			if f, ok := i.(*model.Figure); ok {
				each(f)
			}
		}
	}
	return all
}

// draw puts the drawings of figures into the model, and gives what is wrong with
// them, once for each file.
func (r *reader) draw(figures []*model.Figure) (found []finding.Finding) {
	for _, f := range figures {
		name, _ := insideFolder(f.File.Text)
		read := r.opened(name).wait().drawing.wait()
		if f.Art = read.art; !r.shown[name] {
			found = append(found, read.found...)
		}
		r.shown[name] = true
	}
	return found
}

// unread counts the errors that mean that a part of the pattern is missing from
// the model.
func unread(list []finding.Finding) (n int) {
	for _, f := range list {
		switch f.Rule {
		case "figure-unreadable", "figure-unsupported", "figure-active-content", "markup-in-text", "brace-names-nothing":
		default:
			if f.Severity == finding.Error && !strings.HasPrefix(f.Rule, "outline-") && !strings.HasPrefix(f.Rule, "size-") && f.Rule != "negative-ease" && f.Rule != "body-measure-shrinks" {
				n++
			}
		}
	}
	return
}
