# Least squares with variances known beforehand: rate law and chain, invented numbers in milliseconds.
source("emit.R")
interval <- c(1001/24, 1001/24, 1001/30, 1001/60, 1001/60, 1001/120)
total <- c(318.2, 322.9, 257.1, 138.4, 133.0, 79.8)
u <- c(4.1, 3.2, 2.7, 1.9, 2.4, 1.6)
emit("law.interval", interval)
emit("law.total", total)
emit("law.u", u)
fit <- lm(total ~ interval, weights = 1 / u^2)
covariance <- summary(fit)$cov.unscaled # variances are known: no residual scale
emit("law.estimate", coef(fit))
emit("law.u.estimate", sqrt(diag(covariance)))
emit("law.chisq", sum(((total - fitted(fit)) / u)^2))
emit("law.chisq.p", pchisq(sum(((total - fitted(fit)) / u)^2), 4, lower.tail = FALSE))
at <- c(1, 1001/48)
emit("law.48", c(sum(at * coef(fit)), sqrt(drop(t(at) %*% covariance %*% at))))
# lack of fit: between the weighted means of each rate and the line
rate_means <- sapply(split(seq_along(total), factor(interval)), function(i) sum(total[i] / u[i]^2) / sum(1 / u[i]^2))
rate_weights <- sapply(split(seq_along(total), factor(interval)), function(i) sum(1 / u[i]^2))
at_rate <- sort(unique(interval))
departure <- rate_means - (coef(fit)[1] + coef(fit)[2] * at_rate)
emit("law.lack", c(sum(rate_weights * departure^2), length(at_rate) - 2))

# three bodies, two displays, one link; dummy columns, the last one aliased
chain <- data.frame(
  body = c("a", "b", "c", "a", "b", "c", "a"),
  display = c("hall", "hall", "hall", "stage", "stage", "stage", "stage"),
  link = c(0, 0, 0, 0, 0, 1, 1),
  total = c(101.3, 134.8, 88.1, 121.0, 156.4, 138.7, 152.9),
  u = c(1.2, 1.4, 0.9, 1.1, 1.6, 1.3, 1.5))
emit("chain.total", chain$total)
emit("chain.u", chain$u)
free <- lm(total ~ 0 + body + display + link, chain, weights = 1 / u^2) # bodies, stage − hall, link
cov <- summary(free)$cov.unscaled
emit("chain.stage-hall", c(coef(free)["displaystage"], sqrt(cov["displaystage", "displaystage"])))
emit("chain.link", c(coef(free)["link"], sqrt(cov["link", "link"])))
b <- c(bodya = -1, bodyb = 1, bodyc = 0, displaystage = 0, link = 0)
emit("chain.b-a", c(sum(b * coef(free)), sqrt(drop(t(b) %*% cov %*% b))))
emit("chain.chisq", sum(((chain$total - fitted(free)) / chain$u)^2))
# with the hall display anchored at 12.5 ± 2
x <- cbind(sapply(c("a", "b", "c"), function(k) as.numeric(chain$body == k)), hall = chain$display == "hall", stage = chain$display == "stage", link = chain$link)
x <- rbind(x, c(0, 0, 0, 1, 0, 0))
y <- c(chain$total, 12.5)
anchored <- lm(y ~ 0 + x, weights = 1 / c(chain$u, 2)^2)
emit("chain.anchored", coef(anchored))
emit("chain.anchored.u", sqrt(diag(summary(anchored)$cov.unscaled)))

# a floor: the fastest k rates against the line through the slower ones, for k = 1 and 2
floor_test <- function(y, k) {
  fast <- interval <= c(1001/120, 1001/60)[k] + 1e-9
  line <- lm(y ~ x, data.frame(x = interval[!fast], y = y[!fast]), weights = 1 / u[!fast]^2)
  v <- summary(line)$cov.unscaled
  w <- 1 / u[fast]^2
  level <- sum(w * y[fast]) / sum(w)
  at <- c(1, sum(w * interval[fast]) / sum(w))
  z <- (level - sum(at * coef(line))) / sqrt(1 / sum(w) + drop(t(at) %*% v %*% at))
  chisq <- sum(((y[!fast] - fitted(line)) / u[!fast])^2) + sum(w * (y[fast] - level)^2)
  list(p = pnorm(z, lower.tail = FALSE), level = level, w = sum(w), line = coef(line), v = v, chisq = chisq)
}
floor_total <- c(318.2, 322.9, 257.1, 138.4, 133.0, 131.1)
emit("floor.total", floor_total)
emit("floor.holm", p.adjust(sapply(1:2, function(k) floor_test(floor_total, k)$p), "holm"))
emit("straight.holm", p.adjust(sapply(1:2, function(k) floor_test(total, k)$p), "holm"))
for (k in 1:2) {
  f <- floor_test(floor_total, k)
  a <- f$level - f$line[[1]]
  b <- f$line[[2]]
  va <- 1 / f$w + f$v[1, 1]
  vb <- f$v[2, 2]
  cab <- -f$v[1, 2]
  z2 <- qnorm(0.975)^2
  roots <- sort(Re(polyroot(c(a^2 - z2 * va, -2 * (a * b - z2 * cab), b^2 - z2 * vb))))
  for (rho in roots) stopifnot(abs((a - rho * b)^2 / (z2 * (va - 2 * rho * cab + rho^2 * vb)) - 1) < 1e-8)
  emit(paste0("floor.", k), c(f$level, 1 / sqrt(f$w), a / b, roots, f$chisq))
}
