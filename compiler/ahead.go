package compiler

import (
	"path"
	"runtime"
	"strings"
	"sync"

	"seamwarden/compiler/figure"
	"seamwarden/compiler/model"
	"seamwarden/compiler/outline"
	"seamwarden/compiler/size"
	"seamwarden/compiler/wording"
	"seamwarden/dsl"
	"seamwarden/dsl/finding"
)

// Files are read ahead, several at a time: what a source file names is begun as
// soon as the file is read, and drawings as soon as all source is, since nothing
// waits for them but the booklet and their own findings. What comes out does not
// depend on it, since everything is taken up in the order in which it is named; a
// file that is never taken up is forgotten.

// ahead runs the reading of files beside the main line of work.
type ahead struct {
	mu      sync.Mutex
	queue   []func()
	workers int // as many as there are processors at the most
	sources map[string]*begun[sourceFile]
	opened  map[string]*begun[openedFile]
	figures map[string]*begun[figureFile]
	tables  map[string]*begun[tableFile]
	shapes  map[string]*begun[shapeFile]
	words   map[string]*begun[[]finding.Finding]
	locks   map[string]*begun[laysFile]
	laid    map[string]*begun[*Lays]
	drawn   []string // the drawings that wait for the end of the source
}

type (
	sourceFile struct {
		file *dsl.File
		src  []byte
		err  error
	}
	openedFile struct {
		drawing *begun[figureFile] // what is read of it
		src     []byte
		err     error
	}
	figureFile struct {
		art   *figure.Drawing
		found []finding.Finding
	}
	shapeFile struct {
		drawing *outline.Drawing
		found   []finding.Finding
		src     []byte
		err     error
	}
	tableFile struct {
		chart *size.Chart
		found []finding.Finding
		src   []byte
		err   error
	}
)

// begun is work that has been begun. A fault in it breaks whoever waits for it.
type begun[T any] struct {
	done  chan struct{}
	value T
	fault any
}

func newAhead() *ahead {
	return &ahead{sources: map[string]*begun[sourceFile]{},
		opened: map[string]*begun[openedFile]{}, figures: map[string]*begun[figureFile]{}, tables: map[string]*begun[tableFile]{}, shapes: map[string]*begun[shapeFile]{},
		words: map[string]*begun[[]finding.Finding]{}, locks: map[string]*begun[laysFile]{}, laid: map[string]*begun[*Lays]{}}
}

// begin starts work under a name, unless it has been started.
func begin[T any](a *ahead, all map[string]*begun[T], name string, work func() T) *begun[T] {
	a.mu.Lock()
	defer a.mu.Unlock()
	if b := all[name]; b != nil {
		return b
	}
	b := &begun[T]{done: make(chan struct{})}
	all[name] = b
	a.queue = append(a.queue, func() {
		defer func() {
			b.fault = recover()
			close(b.done)
		}()
		b.value = work()
	})
	if a.workers < runtime.GOMAXPROCS(0) {
		a.workers++
		go a.work()
	}
	return b
}

// work does what is begun, in its order, until nothing is left. One goroutine for
// many files keeps the stack that it has grown.
func (a *ahead) work() {
	for {
		a.mu.Lock()
		if len(a.queue) == 0 {
			a.workers--
			a.mu.Unlock()
			return
		}
		next := a.queue[0]
		a.queue = a.queue[1:]
		a.mu.Unlock()
		next()
	}
}

// wait gives what the work made.
func (b *begun[T]) wait() T {
	<-b.done
	if b.fault != nil {
		panic(b.fault)
	}
	return b.value
}

func (r *reader) source(name string) *begun[sourceFile] {
	return begin(r.ahead, r.ahead.sources, name, func() (s sourceFile) {
		if s.src, s.err = r.read(name); s.err == nil {
			s.file = dsl.Parse(name, s.src)
			r.foresee(s.file.Sentences)
		}
		return
	})
}

// opened takes up the file of a drawing, and has the drawing read behind it.
func (r *reader) opened(name string) *begun[openedFile] {
	return begin(r.ahead, r.ahead.opened, name, func() (o openedFile) {
		if o.src, o.err = r.read(name); o.err == nil {
			o.drawing = r.drawing(name, o.src)
		}
		return
	})
}

func (r *reader) drawing(name string, src []byte) *begun[figureFile] {
	return begin(r.ahead, r.ahead.figures, name, func() (f figureFile) {
		f.art, f.found = figure.Read(name, src)
		return
	})
}

// openDrawings begins with the drawings that the source names.
func (r *reader) openDrawings() {
	r.ahead.mu.Lock()
	names := r.ahead.drawn
	r.ahead.mu.Unlock()
	for _, name := range names {
		r.opened(name)
	}
}

func (r *reader) table(name string) *begun[tableFile] {
	return begin(r.ahead, r.ahead.tables, name, func() (t tableFile) {
		if t.src, t.err = r.read(name); t.err == nil {
			t.chart, t.found = size.Read(name, t.src)
		}
		return
	})
}

// shape reads the outline of a piece.
func (r *reader) shape(name string) *begun[shapeFile] {
	return begin(r.ahead, r.ahead.shapes, name, func() (s shapeFile) {
		if s.src, s.err = r.read(name); s.err == nil {
			s.drawing, s.found = outline.Read(name, s.src)
		}
		return
	})
}

// unusedWords looks for terms that nothing uses, beside the rules, once the drawings
// are read: it needs no conditions, and changes nothing.
func (r *reader) unusedWords(p *model.Pattern) *begun[[]finding.Finding] {
	return begin(r.ahead, r.ahead.words, "", func() []finding.Finding { return wording.UnusedWords(p) })
}

// foresee begins to read what the sentences of a file name, and lies inside the
// folder, or notes it for later. It runs beside everything else and changes nothing.
func (r *reader) foresee(sentences []*dsl.Sentence) {
	for _, s := range sentences {
		switch n := s.Node.(type) {
		case *dsl.Include:
			if name, ok := insideFolder(dsl.Unquote(n.File.Text)); ok && strings.HasSuffix(name, ".seam") {
				r.source(name)
			}
		case *dsl.Figure:
			if name, ok := insideFolder(dsl.Unquote(n.File.Text)); ok && isDrawing(name) {
				r.ahead.mu.Lock()
				r.ahead.drawn = append(r.ahead.drawn, name)
				r.ahead.mu.Unlock()
			}
		case *dsl.Outline:
			if name, ok := insideFolder(dsl.Unquote(n.File.Text)); ok && outline.Readable(name) {
				r.shape(name)
			}
		case *dsl.Setting:
			if n.Key.Text == "sizes" && n.Value != nil {
				if name, ok := insideFolder(dsl.Unquote(n.Value.Text)); ok {
					r.table(name)
				}
			}
		}
		r.foresee(s.Body)
	}
}

func isDrawing(name string) bool { return strings.EqualFold(path.Ext(name), ".svg") }
