module noonbook

go 1.26.8

require (
	github.com/BurntSushi/toml v1.6.0
	github.com/tdewolff/minify/v2 v2.24.25
	github.com/yuin/goldmark v1.8.7
)

require github.com/tdewolff/parse/v2 v2.8.20 // indirect
