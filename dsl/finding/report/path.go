package report

import (
	"net/url"
	"path"
	"strings"
)

// artifact gives a file's place as SARIF wants it (3.4): a relative reference from
// the root, or, for a path from the top of a disk, an absolute URI.
func artifact(file string) sarifArtifact {
	if isAbsolute(file) {
		return sarifArtifact{URI: (&url.URL{Scheme: "file", Path: "/" + strings.TrimLeft(file, "/")}).String()}
	}
	return sarifArtifact{URI: (&url.URL{Path: file}).String(), Base: sarifRoot}
}

// folderPath gives a folder's path with a slash at its end, as a URI of a folder
// has.
func folderPath(p string) string { return strings.TrimSuffix(path.Clean(p), "/") + "/" }

// absolute gives a URI if it has a scheme, and "" else.
func absolute(uri string) string {
	if u, err := url.Parse(uri); err != nil || !u.IsAbs() {
		return ""
	}
	return uri
}

// isAbsolute knows paths from the top of a disk, also such as C:/patterns.
func isAbsolute(p string) bool {
	if path.IsAbs(p) {
		return true
	}
	drive := len(p) > 2 && p[1] == ':' && p[2] == '/'
	return drive && (p[0] >= 'A' && p[0] <= 'Z' || p[0] >= 'a' && p[0] <= 'z')
}
