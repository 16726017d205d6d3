package file

import (
	"path"
	"strings"
)

// mediaTypes holds what a handbook may consist of: the registry of IANA. The lists
// that machines keep differ from one to the next.
var mediaTypes = map[string]string{
	".html": "text/html",
	".css":  "text/css",
	".js":   "text/javascript",
	".csv":  "text/csv",
	".txt":  "text/plain",
	".ics":  "text/calendar",
	".svg":  "image/svg+xml",
	".png":  "image/png",
	".jpg":  "image/jpeg",
	".jpeg": "image/jpeg",
	".gif":  "image/gif",
	".webp": "image/webp",
	".pdf":  "application/pdf",
	".mp3":  "audio/mpeg",
	".ogg":  "audio/ogg",
	".wav":  "audio/vnd.wave",
	".m4a":  "audio/mp4",
	".mp4":  "video/mp4",
	".webm": "video/webm",
}

// MediaType returns the media type of a file by the end of its name. One that no
// handbook is known to hold is octets to whoever gets it: RFC 2046, section 4.5.1.
func MediaType(name string) string {
	if known, ok := mediaTypes[strings.ToLower(path.Ext(name))]; ok {
		return known
	}
	return "application/octet-stream"
}
