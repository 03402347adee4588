# Two samples: the distribution of Behrens and Fisher, two one-sided tests by it, Fieller's sets for a ratio of means.
source("emit.R")
x <- sleep$extra[sleep$group == 1]
y <- sleep$extra[sleep$group == 2]
# the difference of two means whose errors are independent t's, each scaled by its standard error
below <- function(d, u1, df1, u2, df2)
  integrate(function(z) dt(z, df1) * pt((d - u1 * z) / u2, df2), -Inf, Inf, rel.tol = 1e-11, abs.tol = 0, subdivisions = 2000)$value
behrens <- function(name, m1, u1, df1, m2, u2, df2) {
  d <- m1 - m2
  half <- function(level) uniroot(function(h) below(h, u1, df1, u2, df2) - (1 + level) / 2, c(0, 50 * (u1 + u2)), tol = 1e-12)$root
  emit(paste0(name, ".p"), 2 * below(-abs(d), u1, df1, u2, df2))
  emit(paste0(name, ".half"), half(0.95))
  emit(paste0(name, ".half90"), half(0.90))
}
se <- function(v) sd(v) / sqrt(length(v))
behrens("behrens.sleep", mean(x), se(x), 9, mean(y), se(y), 9)
behrens("behrens.auto83b", 20.14458, 6.4147 / sqrt(249), 248, 30.48101, 6.10771 / sqrt(79), 78)
for (m in 2:4) {
  d <- mean(x) - mean(y)
  emit(paste0("tost.", m, ".lower"), below(-(d + m), se(x), 9, se(y), 9))
  emit(paste0("tost.", m, ".upper"), below(d - m, se(x), 9, se(y), 9))
}

# Fieller by its closed form; each limit is checked against the defining equation
fieller <- function(name, a, b, va, vb, cov, df) {
  t2 <- qt(0.975, df)^2
  roots <- sort(Re(polyroot(c(a^2 - t2 * va, -2 * (a * b - t2 * cov), b^2 - t2 * vb))))
  for (rho in roots) stopifnot(abs((a - rho * b)^2 / (t2 * (va - 2 * rho * cov + rho^2 * vb)) - 1) < 1e-8)
  emit(paste0(name, ".g"), t2 * vb / b^2)
  emit(paste0(name, ".roots"), roots)
}
n <- 10
pooled <- (var(x) + var(y)) / 2 / n
fieller("fieller.pooled", mean(x), mean(y), pooled, pooled, 0, Inf)
fieller("fieller.separate", mean(x), mean(y), var(x) / n, var(y) / n, 0, Inf)
fieller("fieller.paired", mean(x), mean(y), var(x) / n, var(y) / n, cov(x, y) / n, Inf)
fieller("fieller.inverse", mean(y), mean(x), pooled, pooled, 0, Inf)
