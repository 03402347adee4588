# Linear models: lm, anova, predict.
source("emit.R")
coefficients_of <- function(name, fit) {
  s <- coef(summary(fit))
  emit(paste0(name, ".estimate"), s[, 1])
  emit(paste0(name, ".se"), s[, 2])
  emit(paste0(name, ".confint"), t(confint(fit)))
}
anova_of <- function(name, fit) {
  a <- anova(fit)
  for (term in rownames(a)) {
    row <- gsub(" ", "", term)
    values <- unlist(a[term, c("Df", "Sum Sq", "Mean Sq", "F value", "Pr(>F)")])
    emit(paste(name, row, sep = "."), values[!is.na(values)])
  }
}

cars_fit <- lm(dist ~ speed, cars)
coefficients_of("cars", cars_fit)
emit("cars.sigma", sigma(cars_fit))
for (speed in c(10, 21)) {
  at <- data.frame(speed = speed)
  emit(paste0("cars.confidence.", speed), predict(cars_fit, at, interval = "confidence"))
}
weighted <- lm(dist ~ speed, cars, weights = 1 / (1:50))
coefficients_of("cars.weighted", weighted)
emit("cars.weighted.sigma", sigma(weighted))

norris <- read.csv("data/norris.csv")
coefficients_of("norris", lm(y ~ x, norris))
no_int <- data.frame(x = 60:70, y = 130:140)
coefficients_of("noint1", lm(y ~ 0 + x, no_int))
si <- read.csv("data/si-rstv.csv")
anova_of("sirstv", lm(resistivity ~ factor(instrument), si))

npk_fit <- lm(yield ~ block + N * P * K, npk)
anova_of("npk", npk_fit)
stopifnot(identical(names(which(is.na(coef(npk_fit)))), "N1:P1:K1"))
anova_of("warpbreaks", lm(breaks ~ wool * tension, warpbreaks))
coefficients_of("warpbreaks.full", lm(breaks ~ wool * tension, warpbreaks))
additive <- lm(breaks ~ wool + tension, warpbreaks)
coefficients_of("warpbreaks.additive", additive)

# weights differ from row to row: an unbalanced factorial, sequential sums of squares
w <- rep(1:6, 9) / 3
anova_of("warpbreaks.weighted", lm(breaks ~ wool + tension, warpbreaks, weights = w))
coefficients_of("warpbreaks.weighted", lm(breaks ~ wool + tension, warpbreaks, weights = w))
