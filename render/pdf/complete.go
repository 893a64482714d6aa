package pdf

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"strconv"
)

// complete adds to a finished file what the PDF package cannot write: the language,
// the wish that a reader shows the title and not the file's name (ISO 32000-1, 7.7.2
// and 12.2), and the file identifier (14.4), which comes from the content so that it
// is the same for the same booklet. The catalogue is the last object of the file, so
// only the place of the cross-reference table moves.
func complete(file []byte, a about) ([]byte, error) {
	const catalogue, start, trailer = "/Type /Catalog\n", "startxref\n", "trailer\n<<\n"
	cat := bytes.LastIndex(file, []byte(catalogue))
	tr := bytes.LastIndex(file, []byte(trailer))
	st := bytes.LastIndex(file, []byte(start))
	if cat < 0 || tr < cat || st < tr {
		return nil, errors.New("the PDF file does not end as expected")
	}
	old, err := strconv.Atoi(string(bytes.TrimSuffix(file[st+len(start):], []byte("\n%%EOF\n"))))
	if err != nil {
		return nil, fmt.Errorf("the PDF file does not end as expected: %w", err)
	}
	extra := "/ViewerPreferences <</DisplayDocTitle true>>\n"
	if a.lang != "" {
		extra += fmt.Sprintf("/Lang <%X>\n", infoString(a.lang))
	}
	id := sha256.Sum256(file)
	copy(file, "%PDF-1.7") // the package says 1.3, which knows neither entry
	var out bytes.Buffer
	out.Write(file[:cat+len(catalogue)])
	out.WriteString(extra)
	out.Write(file[cat+len(catalogue) : tr+len(trailer)])
	fmt.Fprintf(&out, "/ID [<%X> <%X>]\n", id[:16], id[:16])
	out.Write(file[tr+len(trailer) : st+len(start)])
	fmt.Fprintf(&out, "%d\n%%%%EOF\n", old+len(extra))
	return out.Bytes(), nil
}
