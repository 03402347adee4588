# Every script prints lines "name value value …" with 17 significant digits, enough to restore a binary64 number.
options(warn = 2)
emit <- function(name, values) cat(paste(c(name, sprintf("%.17g", as.numeric(values))), collapse = " "), "\n", sep = "")
