namespace throwline {}
